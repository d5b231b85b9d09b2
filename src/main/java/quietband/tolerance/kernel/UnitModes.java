package quietband.tolerance.kernel;

import java.util.TreeSet;

/**
 * Where one unit's platform resonates and how wide, in plain arrays: K phi = w^2 M phi by Jacobi's rotations of
 * L^-1 K L^-T, M = L L^T, a third of each spring's mass counted with the platform and relaxing branches taken as stiff as they
 * are near the mode. Good enough to seed a grid; tables use the exact modes.
 */
public final class UnitModes {

    private static final int IN_WIDTH = 8;

    final double[] omega = new double[6];
    final double[] width = new double[6];
    private final double[][] a = new double[6][6];
    private final double[][] v = new double[6][6];
    private final double[][] l = new double[6][6];
    private final double[][] m = new double[6][6];

    /** Works out a unit. */
    public void fill(UnitBody body) {
        for (int pass = 0; pass < (body.relaxing.isEmpty() ? 1 : 2); pass++) {
            double w = pass == 0 ? 0 : Math.sqrt(Math.abs(omega[0] * omega[5]));
            matrices(body, w);
            reduce();
            rotate();
            for (int n = 0; n < 6; n++) {
                omega[n] = Math.sqrt(Math.max(0, a[n][n]));
            }
        }
        for (int n = 0; n < 6; n++) {
            width[n] = lost(body, n) / Math.max(omega[n], Double.MIN_NORMAL);
        }
    }

    private void matrices(UnitBody body, double w) {
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j <= i; j++) {
                int e = UnitBody.at(i, j);
                double k = body.staticStiffness()[e];
                for (UnitBody.Relaxing r : body.relaxing) {
                    k += r.stiffness()[e] * w * w / (w * w + r.corner() * r.corner());
                }
                double mass = body.m[e];
                for (UnitBody.Line line : body.lines) {
                    mass += line.mass() / 3 * line.row()[i] * line.row()[j];
                }
                a[i][j] = k;
                a[j][i] = k;
                m[i][j] = mass;
            }
        }
    }

    /** Cholesky of m into l, then a = l^-1 a l^-T. */
    private void reduce() {
        for (int j = 0; j < 6; j++) {
            for (int i = j; i < 6; i++) {
                double sum = m[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(sum) : sum / l[j][j];
            }
        }
        for (int c = 0; c < 6; c++) {
            for (int i = 0; i < 6; i++) {
                double sum = a[i][c];
                for (int k = 0; k < i; k++) {
                    sum -= l[i][k] * a[k][c];
                }
                a[i][c] = sum / l[i][i];
            }
        }
        for (int r = 0; r < 6; r++) {
            for (int j = 0; j < 6; j++) {
                double sum = a[r][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[j][k] * a[r][k];
                }
                a[r][j] = sum / l[j][j];
            }
        }
    }

    private void rotate() {
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                v[i][j] = i == j ? 1 : 0;
            }
        }
        for (int sweep = 0; sweep < 12; sweep++) {
            double off = 0;
            double diagonal = 0;
            for (int i = 0; i < 6; i++) {
                diagonal += a[i][i] * a[i][i];
                for (int j = 0; j < i; j++) {
                    off += a[i][j] * a[i][j];
                }
            }
            if (off <= 1e-24 * diagonal) {
                return;
            }
            for (int p = 0; p < 5; p++) {
                for (int q = p + 1; q < 6; q++) {
                    rotate(p, q);
                }
            }
        }
    }

    private void rotate(int p, int q) {
        if (a[p][q] == 0) {
            return;
        }
        double theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
        double t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        double c = 1 / Math.sqrt(t * t + 1);
        double s = t * c;
        for (int k = 0; k < 6; k++) {
            double x = a[k][p];
            double y = a[k][q];
            a[k][p] = c * x - s * y;
            a[k][q] = s * x + c * y;
        }
        for (int k = 0; k < 6; k++) {
            double x = a[p][k];
            double y = a[q][k];
            a[p][k] = c * x - s * y;
            a[q][k] = s * x + c * y;
            x = v[k][p];
            y = v[k][q];
            v[k][p] = c * x - s * y;
            v[k][q] = s * x + c * y;
        }
    }

    /** phi^T Im D(w_n) phi of a mode, phi mass-normalised: full width at half power times w. */
    private double lost(UnitBody body, int n) {
        double[] phi = new double[6];
        for (int i = 5; i >= 0; i--) {
            double sum = v[i][n];
            for (int k = i + 1; k < 6; k++) {
                sum -= l[k][i] * phi[k];
            }
            phi[i] = sum / l[i][i];
        }
        double w = omega[n];
        double sum = 0;
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                int e = i >= j ? UnitBody.at(i, j) : UnitBody.at(j, i);
                double im = w * body.c[e] + body.loss[e];
                for (UnitBody.Relaxing r : body.relaxing) {
                    im += r.stiffness()[e] * w * r.corner() / (w * w + r.corner() * r.corner());
                }
                for (UnitBody.Line line : body.lines) {
                    im += line.stiffness() * line.loss() * line.row()[i] * line.row()[j];
                }
                sum += phi[i] * im * phi[j];
            }
        }
        return sum;
    }

    /**
     * Frequencies around every mode that a grid would step over: eight in each half-power width, thinning out until the grid is as
     * dense; and around the standing waves of springs with mass.
     *
     * @param spacing of the grid, as a ratio less 1
     */
    public double[] seeds(UnitBody body, double from, double to, double spacing) {
        TreeSet<Double> seeds = new TreeSet<>();
        for (int n = 0; n < 6; n++) {
            fan(seeds, omega[n] / (2 * Math.PI), width[n] / (2 * Math.PI), from, to, spacing);
        }
        for (UnitBody.Line line : body.lines) {
            double first = Math.sqrt(line.stiffness() / line.mass()) / 2;
            for (int n = 1; n * first <= to && n < 50; n++) {
                fan(seeds, n * first, n * first * Math.max(line.loss(), 1e-5), from, to, spacing);
            }
        }
        return seeds.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void fan(TreeSet<Double> seeds, double centre, double width, double from, double to, double spacing) {
        double step = Math.max(width, 1e-6 * centre) / IN_WIDTH;
        if (!(centre > from / 2 && centre < to * 1.1) || step * 6 > spacing * centre * IN_WIDTH) {
            return;
        }
        double away = 0;
        seeds.add(Math.max(from, Math.min(to, centre)));
        for (int i = 0; i < 300 && step < spacing * centre; i++) {
            away += step;
            step *= i >= 2 * IN_WIDTH ? 1.3 : 1;
            if (centre - away >= from) {
                seeds.add(centre - away);
            }
            if (centre + away <= to) {
                seeds.add(centre + away);
            }
        }
    }
}
