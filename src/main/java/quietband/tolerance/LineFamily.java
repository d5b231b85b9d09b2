package quietband.tolerance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.complex.Complex;

/**
 * Springs with mass along one principal axis that differ little from one another. What such a line adds to D and to N,
 * {@code k* phi(u)} and {@code m chi(u)} with {@code phi = b cot b}, {@code chi = tan(b/2)/b}, {@code u = b^2 = w^2 m/k*}, is expanded
 * around their mean: with {@code u_i = u (1 + d_i)} the sums over the lines are
 * {@code sum_p u^p phi^(p)(u)/p! sum_i k*_i d_i^p b_i^T b_i}, so that the costly functions are worked out once for all of them.
 */
final class LineFamily {

    /** Highest power of d. */
    static final int ORDER = 5;

    private static final double NEGLIGIBLE = 1e-9;
    private static final double WIDEST = 0.12;

    final double alphaRe;
    final double alphaIm;
    final double[][] kRe;
    final double[][] kIm;
    final double[][] mRe;
    final double[][] mIm;
    private final double spread;
    private final double ratio;

    private LineFamily(List<UnitBody.Line> lines) {
        Complex meanK = Complex.ZERO;
        double meanM = 0;
        for (UnitBody.Line line : lines) {
            meanK = meanK.add(stiffness(line).divide(lines.size()));
            meanM += line.mass() / lines.size();
        }
        Complex alpha = new Complex(meanM).divide(meanK);
        alphaRe = alpha.getReal();
        alphaIm = alpha.getImaginary();
        ratio = alpha.norm();
        int orders = lines.size() == 1 ? 1 : ORDER + 1;
        kRe = new double[orders][UnitBody.TRIANGLE];
        kIm = new double[orders][UnitBody.TRIANGLE];
        mRe = new double[orders][18];
        mIm = new double[orders][18];
        double widest = 0;
        for (UnitBody.Line line : lines) {
            Complex d = orders == 1 ? Complex.ZERO : new Complex(line.mass()).divide(stiffness(line)).divide(alpha).subtract(1);
            widest = Math.max(widest, d.norm());
            add(line, d, orders);
        }
        spread = widest;
    }

    private static Complex stiffness(UnitBody.Line line) {
        return new Complex(line.stiffness(), line.stiffness() * line.loss());
    }

    private void add(UnitBody.Line line, Complex d, int orders) {
        Complex k = stiffness(line);
        Complex m = new Complex(line.mass());
        double[] b = line.row();
        for (int p = 0; p < orders; p++) {
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j <= i; j++) {
                    double rank = b[i] * b[j];
                    kRe[p][UnitBody.at(i, j)] += rank * k.getReal();
                    kIm[p][UnitBody.at(i, j)] += rank * k.getImaginary();
                }
                for (int j = 0; j < 3; j++) {
                    double rank = b[i] * b[j];
                    mRe[p][3 * i + j] += rank * m.getReal();
                    mIm[p][3 * i + j] += rank * m.getImaginary();
                }
            }
            k = k.multiply(d);
            m = m.multiply(d);
        }
    }

    /**
     * Families of a unit's lines: those of one group and axis, or each line by itself where they differ too much for the band.
     *
     * @param top highest angular frequency, rad/s
     */
    static List<LineFamily> of(List<UnitBody.Line> lines, double top) {
        Map<String, List<UnitBody.Line>> families = new LinkedHashMap<>();
        lines.forEach(l -> families.computeIfAbsent(l.family(), f -> new ArrayList<>()).add(l));
        List<LineFamily> made = new ArrayList<>();
        for (List<UnitBody.Line> members : families.values()) {
            LineFamily family = new LineFamily(members);
            if (members.size() > 1 && !(family.step(top) < WIDEST)) {
                members.forEach(l -> made.add(new LineFamily(List.of(l))));
            } else {
                made.add(family);
            }
        }
        return made;
    }

    /** |u| at an angular frequency. */
    double size(double w) {
        return w * w * ratio;
    }

    /** How much smaller each further order is: d over the distance to the nearest pole, at pi^2; infinite beyond it. */
    private double step(double w) {
        double u = size(w);
        return u < Math.PI * Math.PI ? spread * u / (Math.PI * Math.PI - u) : Double.POSITIVE_INFINITY;
    }

    /** How many orders count up to an angular frequency. */
    int orders(double w) {
        if (kRe.length == 1 || spread == 0) {
            return 1;
        }
        double step = step(w);
        double left = step;
        int orders = 1;
        while (orders < ORDER + 1 && left > NEGLIGIBLE) {
            left *= step;
            orders++;
        }
        return orders;
    }
}
