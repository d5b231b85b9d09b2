package quietband.tolerance.draw;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import quietband.model.Design;
import quietband.model.Tolerance;

/** Which tolerances are tied by correlations, and the triangular factor that mixes their normals. */
final class CorrelationFactor {

    private static final double ROUNDING = 1e-9;

    private CorrelationFactor() { }

    /** Sets of tied tolerances by index, in the order of their first members; those that are not tied alone. */
    static List<List<Integer>> groups(Design design) {
        int n = design.tolerances().size();
        int[] leader = new int[n];
        for (int i = 0; i < n; i++) {
            leader[i] = i;
        }
        for (Tolerance.Correlation c : design.correlations()) {
            int low = n;
            List<Integer> tied = c.between().stream().map(name -> index(design, name)).toList();
            for (int i : tied) {
                low = Math.min(low, leader[i]);
            }
            for (int i : tied) {
                int old = leader[i];
                for (int k = 0; k < n; k++) {
                    leader[k] = leader[k] == old ? low : leader[k];
                }
            }
        }
        List<List<Integer>> groups = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            List<Integer> members = new ArrayList<>();
            for (int k = 0; k < n; k++) {
                if (leader[k] == i) {
                    members.add(k);
                }
            }
            if (!members.isEmpty()) {
                groups.add(Collections.unmodifiableList(members));
            }
        }
        return groups;
    }

    private static int index(Design design, String name) {
        for (int i = 0; i < design.tolerances().size(); i++) {
            if (design.tolerances().get(i).name().equals(name)) {
                return i;
            }
        }
        throw new ToleranceException("correlations: '" + name + "' is no tolerance");
    }

    /** The Cholesky factor of a group's correlation matrix; a matrix without full rank gets zero columns. */
    static double[][] mixing(Design design, List<Integer> members) {
        int n = members.size();
        double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            r[i][i] = 1;
        }
        for (Tolerance.Correlation c : design.correlations()) {
            List<Integer> tied = c.between().stream().map(name -> members.indexOf(index(design, name))).toList();
            for (int a : tied) {
                for (int b : tied) {
                    if (a != b && a >= 0 && b >= 0) {
                        r[a][b] = c.coefficient();
                    }
                }
            }
        }
        double[][] l = new double[n][n];
        for (int j = 0; j < n; j++) {
            double pivot = r[j][j];
            for (int k = 0; k < j; k++) {
                pivot -= l[j][k] * l[j][k];
            }
            l[j][j] = pivot > ROUNDING ? Math.sqrt(pivot) : 0;
            for (int i = j + 1; i < n; i++) {
                double sum = r[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = l[j][j] > 0 ? sum / l[j][j] : 0;
            }
        }
        return l;
    }
}
