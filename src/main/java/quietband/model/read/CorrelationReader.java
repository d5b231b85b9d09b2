package quietband.model.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import quietband.model.Tolerance;
import quietband.model.format.WrittenValue;
import quietband.model.quantity.Quantities;
import quietband.model.quantity.SelectedNumbers;
import quietband.model.text.FileProblems;
import quietband.model.text.SpellingSuggestion;
import quietband.model.text.YamlNode;

/** Correlations: their names looked up among the tolerances; together they must form a correlation matrix. */
final class CorrelationReader {

    private static final double ROUNDING = 1e-9;

    private final Map<String, List<Tolerance>> byName = new HashMap<>();
    private final List<String> order;
    private final Quantities quantities;
    private final FileProblems problems;

    CorrelationReader(List<Tolerance> tolerances, Quantities quantities, FileProblems problems) {
        tolerances.forEach(t -> byName.computeIfAbsent(t.name(), n -> new ArrayList<>()).add(t));
        this.order = tolerances.stream().map(Tolerance::name).distinct().toList();
        this.quantities = quantities;
        this.problems = problems;
    }

    /**
     * Every correlation that can be read.
     *
     * @param readable whether all tolerances could be read; else unknown names are not told again
     */
    List<Tolerance.Correlation> read(WrittenValue list, boolean readable) {
        List<Tolerance.Correlation> all = new ArrayList<>();
        double[][] matrix = new double[order.size()][order.size()];
        boolean[][] set = new boolean[order.size()][order.size()];
        for (WrittenValue entry : list.items()) {
            if (!entry.bad() && names(entry.get("between"), readable) && readable) {
                List<String> between = entry.get("between").items().stream().map(WrittenValue::text).toList();
                double coefficient = entry.get("coefficient").number();
                fill(entry, between, coefficient, matrix, set);
                all.add(new Tolerance.Correlation(between, coefficient));
            }
        }
        if (!all.isEmpty() && problems.none() && !semidefinite(matrix)) {
            problems.add(list.node(), list.path(), "the coefficients together form no correlation matrix",
                "three that all correlate strongly cannot have mixed signs; make some smaller");
        }
        return all;
    }

    private boolean names(WrittenValue between, boolean readable) {
        int count = -1;
        for (WrittenValue name : between.items()) {
            List<Tolerance> named = byName.getOrDefault(name.text(), List.of());
            if (named.isEmpty()) {
                if (readable) {
                    problems.add(name.node(), between.path(), "'" + YamlNode.shorten(name.text()) + "' is no tolerance",
                        SpellingSuggestion.advice(name.text(), order, "known: " + String.join(", ", order)));
                }
                return false;
            }
            if (named.size() > 1 || named.get(0).kind() == Tolerance.Kind.LOT) {
                problems.add(name.node(), between.path(), named.size() > 1 ? "'" + name.text() + "' is two tolerances"
                    : "'" + name.text() + "' draws whole rows of a lot", named.size() > 1 ? "name them apart"
                    : "rows keep their own correlation; leave it out");
                return false;
            }
            int own = count(named.get(0));
            if (count >= 0 && own != count) {
                problems.add(name.node(), between.path(), "'" + name.text() + "' draws " + own
                    + " numbers, the one before it " + count, "correlate tolerances of equal count");
                return false;
            }
            count = own;
        }
        return true;
    }

    /** How many numbers a tolerance draws for one unit. */
    private int count(Tolerance tolerance) {
        SelectedNumbers of = quantities.find(tolerance.of());
        return switch (tolerance.draw()) {
            case COMPONENT -> of.size();
            case SPRING -> Math.max(1, of.springs());
            case UNIT -> 1;
        };
    }

    private void fill(WrittenValue entry, List<String> between, double coefficient, double[][] matrix, boolean[][] set) {
        for (String a : between) {
            for (String b : between) {
                int i = order.indexOf(a);
                int j = order.indexOf(b);
                if (i < j && set[i][j] && matrix[i][j] != coefficient) {
                    problems.add(entry.node(), entry.path(), "'" + a + "' and '" + b
                        + "' have another coefficient before", "keep one");
                }
                if (i != j) {
                    matrix[i][j] = coefficient;
                    set[i][j] = true;
                }
            }
        }
    }

    private static boolean semidefinite(double[][] offDiagonal) {
        double[][] matrix = new double[offDiagonal.length][];
        for (int i = 0; i < matrix.length; i++) {
            matrix[i] = offDiagonal[i].clone();
            matrix[i][i] = 1;
        }
        double[] values = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(matrix, false)).getEigenvalues();
        return Arrays.stream(values).min().orElse(1) > -ROUNDING;
    }
}
