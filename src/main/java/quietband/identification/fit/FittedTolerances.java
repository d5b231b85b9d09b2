package quietband.identification.fit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import quietband.model.Tolerance;
import quietband.model.edit.ModelFile;
import quietband.model.text.ModelException;
import quietband.units.Amounts;

/** The uncertainties of a fit as tolerances of the model: normal, one number for all places, correlated as found. */
final class FittedTolerances {

    private static final double WORTH = 0.05;

    private FittedTolerances() { }

    static ModelFile tolerances(ModelFile model, List<FitResult.Value> values, double[][] correlation) {
        Set<String> taken = new HashSet<>();
        model.design().tolerances().stream().map(Tolerance::name).forEach(taken::add);
        List<String> entries = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (FitResult.Value v : values) {
            boolean offered = v.state() == FitResult.State.FOUND && v.standardError() > 0;
            names.add(offered ? free("fit of " + v.of(), taken) : null);
            if (offered) {
                entries.add(String.format(Locale.ROOT, "{name: %s, of: %s, add: %s, draw: unit}",
                    quoted(names.get(names.size() - 1)), quoted(v.of()), Amounts.print(rounded(v.standardError()), v.dimension())));
            }
        }
        List<String> pairs = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (names.get(i) != null && names.get(j) != null && Math.abs(correlation[i][j]) > WORTH) {
                    pairs.add(String.format(Locale.ROOT, "{between: [%s, %s], coefficient: %.6f}", quoted(names.get(j)),
                        quoted(names.get(i)), Math.max(-0.999999, Math.min(0.999999, correlation[i][j]))));
                }
            }
        }
        ModelFile with = model.withEntries("tolerances", entries);
        try {
            return with.withEntries("correlations", pairs);
        } catch (ModelException e) {
            // with the small ones left out the coefficients may form no correlation matrix: then none is offered
            return with;
        }
    }

    private static String quoted(String text) {
        return text.contains("[") ? "'" + text + "'" : text;
    }

    private static double rounded(double v) {
        return Double.parseDouble(String.format(Locale.ROOT, "%.3e", v));
    }

    private static String free(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; !taken.add(free); i++) {
            free = name + " " + i;
        }
        return free;
    }
}
