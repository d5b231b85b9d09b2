package quietband.tolerance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Springs with mass along one principal axis that differ little from one another. What such a line adds to D and to N,
 * {@code k* phi(u)} and {@code m chi(u)} with {@code phi = b cot b}, {@code chi = tan(b/2)/b}, {@code u = b^2 = w^2 m/k*}, is expanded
 * around their mean: with {@code u_i = u (1 + d_i)} the sums over the lines are
 * {@code sum_p u^p phi^(p)(u)/p! sum_i k*_i d_i^p b_i^T b_i}, so that the costly functions are worked out once for all of them.
 */
final class LineFamily {

    /** Highest power of d. */
    static final int ORDER = 5;

    private static final double NEGLIGIBLE = 1e-8;
    private static final double WIDEST = 0.12;

    final double alphaRe;
    final double alphaIm;
    final double[][] kRe;
    final double[][] kIm;
    final double[][] mRe;
    final double[][] mIm;
    private final double spread;
    private double dRe;
    private double dIm;
    private final double ratio;

    private LineFamily(List<UnitBody.Line> lines, double top) {
        double meanRe = 0;
        double meanIm = 0;
        double meanM = 0;
        for (UnitBody.Line line : lines) {
            meanRe += line.stiffness() / lines.size();
            meanIm += line.stiffness() * line.loss() / lines.size();
            meanM += line.mass() / lines.size();
        }
        double size = meanRe * meanRe + meanIm * meanIm;
        alphaRe = meanM * meanRe / size;
        alphaIm = -meanM * meanIm / size;
        ratio = meanM / Math.sqrt(size);
        double widest = 0;
        if (lines.size() > 1) {
            for (UnitBody.Line line : lines) {
                departure(line);
                widest = Math.max(widest, Math.hypot(dRe, dIm));
            }
        }
        spread = widest;
        int orders = orders(top);
        kRe = new double[orders][UnitBody.TRIANGLE];
        kIm = new double[orders][UnitBody.TRIANGLE];
        mRe = new double[orders][18];
        mIm = new double[orders][18];
        lines.forEach(this::add);
    }

    /** d of a line: (m/k*)/alpha - 1. */
    private void departure(UnitBody.Line line) {
        // m/(k (1 + j eta) alpha)
        double re = line.stiffness() * (alphaRe - line.loss() * alphaIm) / line.mass();
        double im = line.stiffness() * (alphaIm + line.loss() * alphaRe) / line.mass();
        double s = re * re + im * im;
        dRe = re / s - 1;
        dIm = -im / s;
    }

    private void add(UnitBody.Line line) {
        if (kRe.length > 1) {
            departure(line);
        }
        double[] b = line.row();
        double kr = line.stiffness();
        double ki = line.stiffness() * line.loss();
        double mr = line.mass();
        double mi = 0;
        for (int p = 0; p < kRe.length; p++) {
            for (int i = 0; i < 6; i++) {
                if (b[i] != 0) {
                    addRow(p, i, b, kr, ki, mr, mi);
                }
            }
            double r = kr * dRe - ki * dIm;
            ki = kr * dIm + ki * dRe;
            kr = r;
            r = mr * dRe - mi * dIm;
            mi = mr * dIm + mi * dRe;
            mr = r;
        }
    }

    private void addRow(int p, int i, double[] b, double kr, double ki, double mr, double mi) {
        for (int j = 0; j <= i; j++) {
            double rank = b[i] * b[j];
            kRe[p][UnitBody.at(i, j)] += rank * kr;
            kIm[p][UnitBody.at(i, j)] += rank * ki;
        }
        for (int j = 0; j < 3; j++) {
            double rank = b[i] * b[j];
            mRe[p][3 * i + j] += rank * mr;
            mIm[p][3 * i + j] += rank * mi;
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
            LineFamily family = new LineFamily(members, top);
            if (members.size() > 1 && !(family.step(top) < WIDEST)) {
                members.forEach(l -> made.add(new LineFamily(List.of(l), top)));
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
        if (spread == 0) {
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
