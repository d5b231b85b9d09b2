package quietband.filter;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.response.ResidualResponse;
import quietband.spectrum.Magnitudes;

/**
 * The fullest stack's residual as it depends on the three filters at one frequency, y_j = c_j - sum_i a_ij F_i with
 * a_ij = weight_i P_i sensed_i(e_j), P without its filter. One object serves one thread.
 */
public final class ResidualTerms {

    /**
     * Both at one frequency; arrays are not copied.
     *
     * @param cRe c, real part (length 3)
     * @param cIm c, imaginary part
     * @param aRe a, row by sensor, column by drive, real part (length 9)
     * @param aIm a, imaginary part
     */
    public record At(double[] cRe, double[] cIm, double[] aRe, double[] aIm) {

        /** |c_j|^2 per axis: the residual without any cancellation. */
        public double[] plainSquared() {
            return Magnitudes.squared(cRe, cIm);
        }

        /** |y_j|^2 per axis with the filters' responses. */
        public double[] squared(Complex[] filters) {
            double[] squared = new double[3];
            for (int j = 0; j < 3; j++) {
                double re = cRe[j];
                double im = cIm[j];
                for (int i = 0; i < 3; i++) {
                    double ar = aRe[3 * i + j];
                    double ai = aIm[3 * i + j];
                    re -= ar * filters[i].getReal() - ai * filters[i].getImaginary();
                    im -= ar * filters[i].getImaginary() + ai * filters[i].getReal();
                }
                squared[j] = re * re + im * im;
            }
            return squared;
        }
    }

    private final ResidualResponse response;
    private final PathResponse path;
    private final boolean sprung;
    private final boolean alone;
    private final double half;

    public ResidualTerms(Design design, Assembly assembly, PathResponse path) {
        this(design, assembly, path, false);
    }

    /** With {@code alone} as if each sensor answered only for its own axis. */
    public ResidualTerms(Design design, Assembly assembly, PathResponse path, boolean alone) {
        this.alone = alone;
        this.response = new ResidualResponse(design.withCancellation(design.cancellation().map(c -> c.withoutFilter())), assembly);
        this.path = path;
        this.sprung = Stack.fullest(design).sprung();
        double rate = design.cancellation().orElseThrow().path().sampleRateHz();
        this.half = rate > 0 ? rate / 2 : Double.POSITIVE_INFINITY;
    }

    /** Works out c and a at a frequency in Hz. */
    public At at(double f) {
        double[] cRe = new double[3];
        double[] cIm = new double[3];
        double[] aRe = new double[9];
        double[] aIm = new double[9];
        response.at(f);
        response.residual(sprung ? Stack.ISOLATED : Stack.BARE, cRe, cIm);
        response.sensed(sprung, aRe, aIm);
        for (int i = 0; i < 3; i++) {
            Complex p = f > half ? Complex.ZERO : path.weighted(i, f);
            double re = p.getReal();
            double im = p.getImaginary();
            for (int j = 0; j < 3; j++) {
                double a = aRe[3 * i + j];
                double b = aIm[3 * i + j];
                aRe[3 * i + j] = alone && i != j ? 0 : re * a - im * b;
                aIm[3 * i + j] = alone && i != j ? 0 : re * b + im * a;
            }
        }
        return new At(cRe, cIm, aRe, aIm);
    }

    /** The same at several frequencies. */
    public List<At> on(double[] grid) {
        return Arrays.stream(grid).mapToObj(this::at).toList();
    }
}
