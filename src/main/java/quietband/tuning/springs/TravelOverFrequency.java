package quietband.tuning.springs;

import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.response.travel.Travel;
import quietband.spectrum.LogGrid;
import quietband.tuning.parts.PlatformNumbers;
import quietband.units.StandardGravity;

/**
 * How far the platform sags and travels when all its rates are scaled together, its damping ratios kept.
 *
 * @param cornerHz  geometric mean of the three natural frequencies, Hz, rising
 * @param sag       under 1 g, {@code g0/(2 pi f)^2}, m
 * @param sustained under the sustained acceleration, largest axis, m
 * @param shock     peak under the shock from rest, largest axis, m; 0 without a shock
 */
public record TravelOverFrequency(double[] cornerHz, double[] sag, double[] sustained, double[] shock) {

    private static final int POINTS = 33;

    /** The curve of a design from a third of its natural frequency to three times it, and down to 2 Hz at least. */
    static TravelOverFrequency of(Design design) {
        Vec now = AxisFrequencies.hz(new Assembly(design.platform().orElseThrow()));
        double mean = StrictMath.cbrt(now.x() * now.y() * now.z());
        double[] f = LogGrid.between(POINTS, Math.min(2, mean / 3), mean * 3);
        double[][] rows = IntStream.range(0, POINTS).parallel().mapToObj(i -> at(design, f[i] / mean))
            .toArray(double[][]::new);
        double[] sag = new double[POINTS];
        double[] sustained = new double[POINTS];
        double[] shock = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            double w = 2 * Math.PI * f[i];
            sag[i] = StandardGravity.M_PER_S2 / (w * w);
            sustained[i] = rows[i][0];
            shock[i] = rows[i][1];
        }
        return new TravelOverFrequency(f, sag, sustained, shock);
    }

    private static double[] at(Design design, double ratio) {
        Design scaled = scaled(design, ratio);
        Assembly assembly = new Assembly(scaled.platform().orElseThrow());
        return new double[] {Travel.sustained(scaled, assembly).largest(), Travel.shock(scaled, assembly).largest()};
    }

    /** All natural frequencies times a ratio, damping ratios kept. */
    static Design scaled(Design design, double ratio) {
        PlatformNumbers numbers = new PlatformNumbers(design);
        for (Axis a : Axis.ALL) {
            numbers.scale("stiffness", "", a.ordinal(), ratio * ratio);
            numbers.scale("damping", "", a.ordinal(), ratio);
            numbers.scale("relaxation.corner", "", a.ordinal(), ratio);
        }
        return numbers.design();
    }

    /**
     * Travel either way that a box has to leave at a natural frequency in Hz, m: sustained and the larger of shock and sag; straight
     * in logarithms.
     */
    public double eachWay(double corner) {
        int i = 0;
        while (i + 2 < cornerHz.length && cornerHz[i + 1] < corner) {
            i++;
        }
        double t = StrictMath.log(corner / cornerHz[i]) / StrictMath.log(cornerHz[i + 1] / cornerHz[i]);
        return StrictMath.exp((1 - t) * StrictMath.log(eachWay(i)) + t * StrictMath.log(eachWay(i + 1)));
    }

    private double eachWay(int i) {
        return sustained[i] + Math.max(shock[i], sag[i]);
    }

    /** Rows of natural frequency, sag, sustained and shock travel. */
    public List<double[]> rows() {
        return IntStream.range(0, cornerHz.length).mapToObj(i -> new double[] {cornerHz[i], sag[i], sustained[i],
            shock[i]})
            .toList();
    }
}
