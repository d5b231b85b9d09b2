package quietband.units;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Words for amounts that cannot be read: the usual slips and what to write instead. */
final class UnitSlips {

    private static final Pattern COMMA = Pattern.compile("[+-]?[0-9]+,[0-9].*");
    private static final Pattern NOT_FINITE =
        Pattern.compile("[+-]?\\.?(nan|inf|infinity)\\b.*", Pattern.CASE_INSENSITIVE);
    private static final Pattern BASED = Pattern.compile("[+-]?0[xob][0-9a-fA-F_]+.*");
    private static final Pattern SPACED = Pattern.compile("[+-]?[0-9][0-9_' ]*[0-9].*");

    private UnitSlips() { }

    /** "a stiffness, e.g. 12 N/mm". */
    static String expected(Dimension dimension) {
        return dimension.phrase() + ", e.g. " + dimension.example();
    }

    static WrongAmountException notANumber(String whole, Dimension dimension) {
        String text = whole.substring(0, Math.min(whole.length(), 200));
        String shown = shorten(text);
        if (text.isEmpty()) {
            return new WrongAmountException("is empty", "expected " + expected(dimension));
        }
        if (COMMA.matcher(text).matches()) {
            return new WrongAmountException("'" + shown + "' has a comma",
                "decimals take a point and thousands no mark, e.g. " + shorten(text.replaceFirst(",", ".")));
        }
        if (NOT_FINITE.matcher(text).matches()) {
            return new WrongAmountException("'" + shown + "' is not a finite number", "expected " + expected(dimension));
        }
        if (BASED.matcher(text).matches() || SPACED.matcher(text).matches()) {
            return new WrongAmountException("'" + shown + "' is not a plain decimal number", "expected " + expected(dimension));
        }
        return new WrongAmountException("'" + shown + "' does not start with a number", "expected " + expected(dimension));
    }

    static WrongAmountException wrongUnit(String number, String unit, Dimension due) {
        String shown = "'" + shorten(number + (unit.isEmpty() || unit.equals("%") ? "" : " ") + unit) + "'";
        if (unit.startsWith(",") || unit.matches("[xob_'0-9][0-9a-fA-F_'].*")) {
            return notANumber(number + unit, due);
        }
        if (unit.isEmpty()) {
            return new WrongAmountException(shown + " has no unit", "expected " + expected(due) + remark(due));
        }
        if (due == Dimension.NUMBER) {
            return new WrongAmountException(shown + " has a unit", "expected a bare number, e.g. " + shorten(number));
        }
        Optional<Unit> slip = sloppy(unit, due);
        if (slip.isPresent()) {
            return new WrongAmountException(shown + ": unit '" + shorten(unit) + "' is not known",
                "write " + shorten(number) + " " + slip.get().text() + remark(due));
        }
        List<Dimension> meanings = UnitText.meanings(unit);
        if (meanings.contains(due)) {
            return new WrongAmountException(shown + " is " + due.phrase() + " in a unit that is not accepted",
                "use " + choices(due) + remark(due));
        }
        if (!meanings.isEmpty()) {
            String is = meanings.stream().map(Dimension::phrase).distinct().collect(Collectors.joining(" or "));
            return new WrongAmountException(shown + " is " + is, "expected " + expected(due) + remark(due));
        }
        if (UnitText.isUnit(unit)) {
            return new WrongAmountException(shown + " is not " + due.phrase(), "expected " + expected(due) + remark(due));
        }
        return new WrongAmountException(shown + ": unit '" + shorten(unit) + "' is not known",
            "expected " + expected(due) + remark(due));
    }

    /** The accepted unit that was meant when only case, spaces, signs or ways of writing differ. */
    private static Optional<Unit> sloppy(String unit, Dimension due) {
        String plain = UnitText.plainSigns(unit);
        Optional<Unit> exact = due.unit(plain);
        if (exact.isPresent()) {
            return exact;
        }
        String lower = plain.toLowerCase(Locale.ROOT);
        return due.units().stream().filter(u -> u.text().toLowerCase(Locale.ROOT).equals(lower)).findFirst();
    }

    private static String remark(Dimension due) {
        return switch (due) {
            case MASS -> " (g is the gram here)";
            case ACCELERATION -> " (g is standard gravity here)";
            default -> "";
        };
    }

    private static String choices(Dimension due) {
        List<String> all = due.units().stream().map(Unit::text).filter(t -> !t.isEmpty()).toList();
        int last = all.size() - 1;
        return last == 0 ? all.get(0) : String.join(", ", all.subList(0, last)) + " or " + all.get(last);
    }

    static String shorten(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() <= 40 ? line : line.substring(0, 37) + "...";
    }
}
