package quietband.filter;

import java.util.Optional;
import org.hipparchus.complex.Complex;
import quietband.model.Design;
import quietband.platform.Assembly;

/** The three filters that would leave nothing at a frequency, whether any device can have them or not: sum_i a_ij F_i = c_j. */
public final class IdealFilter {

    private static final double SINGULAR = 1e-9;

    private final ResidualTerms terms;

    /** For a design, with a measured path in place of its own where there is one. */
    public IdealFilter(Design design, Optional<MeasuredPath> measured) {
        terms = new ResidualTerms(design, design.platform().map(Assembly::new).orElse(null),
            measured.<PathResponse>map(m -> m).orElseGet(() -> PathResponse.of(design)));
    }

    /** F_x, F_y, F_z at f in Hz; NaN where a sensor has no part in the cancellation or the three cannot be told apart. */
    public Complex[] at(double f) {
        ResidualTerms.At t = terms.at(f);
        Complex[][] m = new Complex[3][3];
        Complex[] c = new Complex[3];
        for (int j = 0; j < 3; j++) {
            c[j] = new Complex(t.cRe()[j], t.cIm()[j]);
            for (int i = 0; i < 3; i++) {
                m[j][i] = new Complex(t.aRe()[3 * i + j], t.aIm()[3 * i + j]);
            }
        }
        // a sensor without a part: its own equation in place
        for (int i = 0; i < 3; i++) {
            if (m[0][i].isZero() && m[1][i].isZero() && m[2][i].isZero()) {
                m[i] = new Complex[] {Complex.ZERO, Complex.ZERO, Complex.ZERO};
                m[i][i] = Complex.ONE;
                c[i] = Complex.NaN;
            }
        }
        Complex whole = determinant(m);
        double size = 1;
        for (int i = 0; i < 3; i++) {
            size *= Math.sqrt(square(m[0][i]) + square(m[1][i]) + square(m[2][i]));
        }
        Complex[] filters = {Complex.NaN, Complex.NaN, Complex.NaN};
        for (int i = 0; i < 3 && whole.norm() > SINGULAR * size; i++) {
            if (c[i].isNaN()) {
                continue;
            }
            Complex[][] with = {m[0].clone(), m[1].clone(), m[2].clone()};
            for (int j = 0; j < 3; j++) {
                with[j][i] = c[j].isNaN() ? Complex.ZERO : c[j];
            }
            filters[i] = determinant(with).divide(whole);
        }
        return filters;
    }

    private static double square(Complex v) {
        return v.getReal() * v.getReal() + v.getImaginary() * v.getImaginary();
    }

    private static Complex determinant(Complex[][] m) {
        return minor(m, 0, 1, 2).subtract(minor(m, 1, 0, 2)).add(minor(m, 2, 0, 1));
    }

    private static Complex minor(Complex[][] m, int i, int k, int l) {
        return m[0][i].multiply(m[1][k].multiply(m[2][l]).subtract(m[1][l].multiply(m[2][k])));
    }
}
