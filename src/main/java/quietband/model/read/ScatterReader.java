package quietband.model.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.model.Tolerance;
import quietband.model.format.WrittenValue;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.NumberChange;
import quietband.model.quantity.NumberRange;
import quietband.model.quantity.Quantities;
import quietband.model.quantity.SelectedNumbers;
import quietband.model.text.CsvTable;
import quietband.model.text.FileProblems;
import quietband.model.text.YamlNode;
import quietband.units.Dimension;

/** Tolerances and conditions: their paths looked up, their values read in the unit of what they name. */
final class ScatterReader {

    private final Quantities quantities;
    private final ReferencedFiles references;
    private final FileProblems problems;
    private final ScalarReader scalars;

    ScatterReader(Quantities quantities, ReferencedFiles references, FileProblems problems) {
        this.quantities = quantities;
        this.references = references;
        this.problems = problems;
        this.scalars = new ScalarReader(problems);
    }

    /** Every tolerance that can be read; those that cannot are told. */
    List<Tolerance> tolerances(WrittenValue list) {
        List<Tolerance> all = new ArrayList<>();
        list.items().forEach(item -> tolerance(item).ifPresent(all::add));
        return all;
    }

    private Optional<Tolerance> tolerance(WrittenValue entry) {
        Optional<SelectedNumbers> of = selection(entry.get("of"));
        WrittenValue lot = entry.get("lot");
        Tolerance.Kind kind = kind(entry);
        Tolerance.Distribution distribution = entry.get("distribution").text().isEmpty() ? Tolerance.Distribution.NORMAL
            : Tolerance.Distribution.valueOf(entry.get("distribution").text().toUpperCase(Locale.ROOT));
        Tolerance.Draw draw = switch (entry.get("draw").text()) {
            case "spring" -> Tolerance.Draw.SPRING;
            case "unit" -> Tolerance.Draw.UNIT;
            default -> Tolerance.Draw.COMPONENT;
        };
        truncationDue(entry, kind, distribution);
        if (of.isEmpty() || kind == null || entry.bad()) {
            return Optional.empty();
        }
        if (draw == Tolerance.Draw.SPRING && of.get().springs() == 0) {
            problems.add(entry.get("draw").node(), entry.get("draw").path(), "spring is for quantities of springs only",
                "write unit, or leave draw out");
        }
        String name = entry.get("name").given() ? entry.get("name").text() : of.get().path();
        if (kind == Tolerance.Kind.LOT) {
            return lot(lot, of.get()).map(rows -> new Tolerance(name, of.get().path(), kind, 0, distribution, draw,
                Double.POSITIVE_INFINITY, Optional.of(rows)));
        }
        double value = kind == Tolerance.Kind.SCALE ? scale(entry.get("scale"), of.get())
            : amount(entry.get("add"), of.get().dimension().difference(), NumberRange.NOT_NEGATIVE);
        double limit = !entry.get("truncate_at").given() ? Double.POSITIVE_INFINITY
            : amount(entry.get("truncate_at"), kind == Tolerance.Kind.SCALE ? Dimension.RATIO
                : of.get().dimension().difference(), NumberRange.POSITIVE);
        return Optional.of(new Tolerance(name, of.get().path(), kind, value, distribution, draw, limit, Optional.empty()));
    }

    private Tolerance.Kind kind(WrittenValue entry) {
        boolean scale = entry.get("scale").given();
        boolean add = entry.get("add").given();
        boolean lot = entry.get("lot").given();
        if ((scale ? 1 : 0) + (add ? 1 : 0) + (lot ? 1 : 0) != 1) {
            boolean none = !scale && !add && !lot;
            problems.add(entry.node(), entry.path(), none ? "has no value" : "has more than one of scale, add and lot",
                "write exactly one of scale, add and lot");
            return null;
        }
        return lot ? Tolerance.Kind.LOT : scale ? Tolerance.Kind.SCALE : Tolerance.Kind.ADD;
    }

    private void truncationDue(WrittenValue entry, Tolerance.Kind kind, Tolerance.Distribution distribution) {
        WrittenValue limit = entry.get("truncate_at");
        if (limit.given() && distribution != Tolerance.Distribution.TRUNCATED) {
            problems.add(limit.node(), limit.path(), "is for distribution truncated only",
                "write distribution: truncated, or leave truncate_at out");
        } else if (!limit.given() && distribution == Tolerance.Distribution.TRUNCATED) {
            problems.add(entry.get("distribution").node(), entry.path(), "a truncated distribution lacks truncate_at",
                "add it, e.g. truncate_at: 3 %");
        }
        if (kind == Tolerance.Kind.LOT) {
            for (String key : List.of("distribution", "draw")) {
                if (entry.get(key).given()) {
                    problems.add(entry.get(key).node(), entry.get(key).path(), "means nothing beside lot",
                        "rows of a lot are drawn whole; leave it out");
                }
            }
        }
    }

    private Optional<Tolerance.Lot> lot(WrittenValue lot, SelectedNumbers of) {
        if (of.size() != 3 || of.dimension() != Dimension.SENSITIVITY) {
            problems.add(lot.node(), lot.path(), "a lot holds sensitivities along x, y and z",
                "name oscillator.resonator.sensitivity in of");
            return Optional.empty();
        }
        Optional<CsvTable> table = references.table(lot);
        if (table.isEmpty() || !references.collect(() -> lot.value(ProfileFile.lot(table.get(), lot.text())))) {
            return Optional.empty();
        }
        return Optional.of((Tolerance.Lot) lot.value());
    }

    /** Every condition that can be read; those that cannot are told. */
    List<Tolerance.Condition> conditions(WrittenValue list) {
        List<Tolerance.Condition> all = new ArrayList<>();
        for (WrittenValue entry : list.items()) {
            List<NumberChange> changes = new ArrayList<>();
            entry.get("change").items().forEach(c -> change(c).ifPresent(changes::add));
            if (!entry.bad() && changes.size() == entry.get("change").items().size()) {
                Tolerance.Condition condition = new Tolerance.Condition(entry.text(), changes);
                quantities.changed(changes).outOfRange().filter(w -> quantities.outOfRange().isEmpty())
                    .ifPresent(words -> problems.add(entry.node(), entry.path(), "under it " + words,
                        "make the change smaller"));
                all.add(condition);
            }
        }
        return all;
    }

    private Optional<NumberChange> change(WrittenValue entry) {
        Optional<SelectedNumbers> of = selection(entry.get("of"));
        List<String> acts = List.of("set", "scale", "add").stream().filter(a -> entry.get(a).given()).toList();
        if (acts.size() != 1) {
            problems.add(entry.node(), entry.path(), acts.isEmpty() ? "changes nothing"
                : "has " + String.join(" and ", acts), "write exactly one of set, scale and add");
            return Optional.empty();
        }
        if (of.isEmpty() || entry.bad()) {
            return Optional.empty();
        }
        WrittenValue amount = entry.get(acts.get(0));
        Dimension dimension = of.get().dimension();
        double value = switch (acts.get(0)) {
            case "set" -> amount(amount, dimension, of.get().detail(0).range());
            case "scale" -> scale(amount, of.get());
            default -> amount(amount, dimension.difference(), NumberRange.ANY);
        };
        return Double.isNaN(value) ? Optional.empty() : Optional.of(new NumberChange(of.get().path(),
            NumberChange.Act.valueOf(acts.get(0).toUpperCase(Locale.ROOT)), value));
    }

    private double scale(WrittenValue scale, SelectedNumbers of) {
        if (!of.dimension().linear()) {
            problems.add(scale.node(), scale.path(), of.path() + " is in decibels and cannot be scaled",
                "use add, e.g. add: 1 dB");
        }
        return scale.number();
    }

    private double amount(WrittenValue written, Dimension dimension, NumberRange range) {
        return scalars.amount(written.node(), written.text(), dimension, range, written.path());
    }

    private Optional<SelectedNumbers> selection(WrittenValue of) {
        if (!of.good()) {
            return Optional.empty();
        }
        try {
            return Optional.of(quantities.find(of.text()));
        } catch (BadPathException e) {
            problems.add(of.node(), of.path(), "'" + YamlNode.shorten(of.text()) + "' " + e.found(), e.advice());
            return Optional.empty();
        }
    }
}
