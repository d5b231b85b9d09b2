package quietband.cli.option;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quietband.cli.terminal.InputErrorException;
import quietband.model.Design;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.Quantities;
import quietband.model.quantity.SelectedNumbers;
import quietband.tuning.trade.VariedQuantity;
import quietband.units.Amounts;
import quietband.units.Unit;
import quietband.units.WrongAmountException;

/**
 * One {@code --vary "PATH = A to B, N steps"}.
 *
 * @param vary what it means
 * @param unit as the person wrote it
 */
public record VaryOption(VariedQuantity vary, Unit unit) {

    private static final Pattern FORM = Pattern.compile("([^=]+?)\\s*=\\s*(.+?)\\s+to\\s+([^,]+?)\\s*(?:,\\s*([0-9]{1,6})\\s+steps?)?");
    private static final int STEPS = 21;

    /** Reads one for a design. */
    public static VaryOption read(String text, Design design) {
        Matcher m = FORM.matcher(text.strip());
        if (!m.matches()) {
            throw new InputErrorException("--vary: '" + text.strip()
                + "' is not of the form \"platform.springs.stiffness = 6 N/mm to 14 N/mm, 21 steps\"");
        }
        SelectedNumbers what = find(m.group(1), design);
        Amounts.Amount from = amount(m.group(2), what);
        Amounts.Amount to = amount(m.group(3), what);
        int steps = m.group(4) == null ? STEPS : Integer.parseInt(m.group(4));
        if (steps < 2) {
            throw new InputErrorException("--vary: " + what.path() + ": at least 2 steps, from one end to the other");
        }
        if (from.value() == to.value()) {
            throw new InputErrorException("--vary: " + what.path() + ": both ends are " + m.group(2).strip());
        }
        for (double end : new double[] {from.value(), to.value()}) {
            double[] v = design.quantities().values();
            for (int slot : what.slots()) {
                v[slot] = end;
            }
            Quantities changed = design.quantities().with(v);
            if (!changed.within(what.slots())) {
                throw new InputErrorException("--vary: " + changed.outOfRange().orElse(what.path() + " is out of its range"));
            }
        }
        Unit unit = from.unit().or(to::unit).orElse(what.dimension().plain());
        return new VaryOption(new VariedQuantity(what, from.value(), to.value(), steps), unit);
    }

    private static SelectedNumbers find(String path, Design design) {
        try {
            return design.quantities().find(path);
        } catch (BadPathException e) {
            throw new InputErrorException("--vary: " + e.getMessage());
        }
    }

    private static Amounts.Amount amount(String text, SelectedNumbers what) {
        try {
            return Amounts.amount(text, what.dimension());
        } catch (WrongAmountException e) {
            throw new InputErrorException("--vary: " + what.path() + ": " + e.getMessage());
        }
    }

    /** Refuses two that name the same number. */
    public static void apart(List<VaryOption> options) {
        Set<Integer> seen = new HashSet<>();
        for (VaryOption o : options) {
            for (int slot : o.vary().what().slots()) {
                if (!seen.add(slot)) {
                    throw new InputErrorException("--vary: " + o.vary().what().detail(0).path() + " is varied twice; keep one");
                }
            }
        }
    }

}
