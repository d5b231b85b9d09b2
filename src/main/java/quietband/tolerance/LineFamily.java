package quietband.tolerance;

import java.util.ArrayList;
import java.util.List;

/**
 * Springs with mass along one principal axis that differ little from one another. What such a line adds to D and to N,
 * {@code k* phi(u)} and {@code m chi(u)} with {@code phi = b cot b}, {@code chi = tan(b/2)/b}, {@code u = b^2 = w^2 m/k*}, is expanded
 * around one u for all: with {@code u_i = u (1 + d_i)} the sums over the lines are
 * {@code sum_p u^p phi^(p)(u)/p! sum_i k*_i d_i^p b_i^T b_i}. Where the design's own line is near enough the expansion is around that,
 * and the costly functions are those of a table that all units share; else it is around the lines' mean.
 */
final class LineFamily {

    /** Highest power of d around the lines' mean. */
    static final int ORDER = 5;
    /** How many powers of d tables of the design's lines hold. */
    static final int TABLED = 12;

    private static final double NEGLIGIBLE = 1e-8;
    private static final double WIDEST = 0.12;
    // 0.2^12 is 4e-9
    private static final double WIDEST_TABLED = 0.2;

    /** Which family's table serves; -1 when none does. */
    final int table;
    final double alphaRe;
    final double alphaIm;
    /** sum_i k*_i d_i^p b_i^T b_i by element of the triangle, then p; null where it is zero. */
    final double[][] kRe = new double[UnitBody.TRIANGLE][];
    final double[][] kIm = new double[UnitBody.TRIANGLE][];
    /** sum_i m_i d_i^p b_i^T b_i by element of N, then p; null where it is zero. */
    final double[][] mRe = new double[18][];
    final double[][] mIm = new double[18][];
    private final double ratio;
    private double spread;
    private double dRe;
    private double dIm;

    private LineFamily(int table, double alphaRe, double alphaIm) {
        this.table = table;
        this.alphaRe = alphaRe;
        this.alphaIm = alphaIm;
        this.ratio = Math.sqrt(alphaRe * alphaRe + alphaIm * alphaIm);
    }

    /** A family around the mean of its lines. */
    static LineFamily aroundMean(List<UnitBody.Line> lines) {
        double meanRe = 0;
        double meanIm = 0;
        double meanM = 0;
        for (UnitBody.Line line : lines) {
            meanRe += line.stiffness() / lines.size();
            meanIm += line.stiffness() * line.loss() / lines.size();
            meanM += line.mass() / lines.size();
        }
        double size = meanRe * meanRe + meanIm * meanIm;
        LineFamily family = new LineFamily(-1, meanM * meanRe / size, -meanM * meanIm / size);
        family.spread = lines.size() > 1 ? family.widest(lines) : 0;
        return family;
    }

    private double widest(List<UnitBody.Line> lines) {
        double widest = 0;
        for (UnitBody.Line line : lines) {
            departure(line);
            widest = Math.max(widest, dRe * dRe + dIm * dIm);
        }
        return Math.sqrt(widest);
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

    private LineFamily with(List<UnitBody.Line> lines, double top) {
        int orders = orders(top);
        double[] powers = new double[4 * orders];
        for (UnitBody.Line line : lines) {
            powers(line, orders, powers);
            for (int i = 0; i < 6; i++) {
                addRow(line.row(), i, powers, orders);
            }
        }
        return this;
    }

    /** k* d^p and m d^p, real and imaginary parts. */
    private void powers(UnitBody.Line line, int orders, double[] powers) {
        if (orders > 1) {
            departure(line);
        }
        double kr = line.stiffness();
        double ki = line.stiffness() * line.loss();
        double mr = line.mass();
        double mi = 0;
        for (int p = 0; p < orders; p++) {
            powers[p] = kr;
            powers[orders + p] = ki;
            powers[2 * orders + p] = mr;
            powers[3 * orders + p] = mi;
            double r = kr * dRe - ki * dIm;
            ki = kr * dIm + ki * dRe;
            kr = r;
            r = mr * dRe - mi * dIm;
            mi = mr * dIm + mi * dRe;
            mr = r;
        }
    }

    private void addRow(double[] b, int i, double[] powers, int orders) {
        if (b[i] == 0) {
            return;
        }
        for (int j = 0; j <= i; j++) {
            add(kRe, kIm, UnitBody.at(i, j), b[i] * b[j], powers, 0, orders);
        }
        for (int j = 0; j < 3; j++) {
            add(mRe, mIm, 3 * i + j, b[i] * b[j], powers, 2 * orders, orders);
        }
    }

    private static void add(double[][] re, double[][] im, int e, double rank, double[] powers, int from, int orders) {
        if (rank == 0) {
            return;
        }
        if (re[e] == null) {
            re[e] = new double[orders];
            im[e] = new double[orders];
        }
        double[] r = re[e];
        double[] i = im[e];
        for (int p = 0; p < orders; p++) {
            r[p] += rank * powers[from + p];
            i[p] += rank * powers[from + orders + p];
        }
    }

    /**
     * Families of a unit's lines: those of one group and axis, or each line by itself where they differ too much for the band.
     *
     * @param top  highest angular frequency, rad/s
     * @param near the design's families to expand around, by number; empty when there are no tables
     */
    static List<LineFamily> of(List<UnitBody.Line> lines, double top, LineTables near) {
        int families = 0;
        for (UnitBody.Line line : lines) {
            families = Math.max(families, line.family() + 1);
        }
        List<LineFamily> made = new ArrayList<>(families);
        List<UnitBody.Line> members = new ArrayList<>(lines.size());
        for (int f = 0; f < families; f++) {
            members.clear();
            for (UnitBody.Line line : lines) {
                if (line.family() == f) {
                    members.add(line);
                }
            }
            if (!members.isEmpty()) {
                add(made, f, members, top, near);
            }
        }
        return made;
    }

    private static void add(List<LineFamily> made, int f, List<UnitBody.Line> members, double top, LineTables near) {
        if (near.holds(f)) {
            LineFamily family = new LineFamily(f, near.alphaRe(f), near.alphaIm(f));
            family.spread = family.widest(members);
            if (family.step(top) < WIDEST_TABLED) {
                made.add(family.with(members, top));
                return;
            }
        }
        LineFamily family = aroundMean(members);
        if (members.size() > 1 && !(family.step(top) < WIDEST)) {
            members.forEach(l -> made.add(aroundMean(List.of(l)).with(List.of(l), top)));
        } else {
            made.add(family.with(members, top));
        }
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
        int most = table >= 0 ? TABLED : ORDER + 1;
        double step = step(w);
        double left = step;
        int orders = 1;
        while (orders < most && left > NEGLIGIBLE) {
            left *= step;
            orders++;
        }
        return orders;
    }
}
