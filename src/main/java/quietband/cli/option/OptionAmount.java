package quietband.cli.option;

import quietband.cli.terminal.InputErrorException;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.WrongAmountException;

/** Amounts in the values of options. */
public final class OptionAmount {

    private OptionAmount() { }

    /** In the dimension's base unit; what is no such amount is an input error of the option. */
    public static double read(String option, String text, Dimension dimension) {
        try {
            return Amounts.read(text, dimension);
        } catch (WrongAmountException e) {
            throw new InputErrorException(option + ": " + e.getMessage());
        }
    }

    /** One that is above 0, and finite. */
    static double positive(String option, String text, Dimension dimension) {
        return positive(option, text, dimension, Double.MAX_VALUE, "every number");
    }

    /**
     * One that is above 0.
     *
     * @param most the most that is taken, in the base unit
     * @param shown the same in words
     */
    static double positive(String option, String text, Dimension dimension, double most, String shown) {
        double v = read(option, text, dimension);
        if (!(v > 0 && v <= most)) {
            throw new InputErrorException(option + ": '" + text.strip() + "' is " + (v > most ? "beyond " + shown + "; give less"
                : "not above 0"));
        }
        return v;
    }
}
