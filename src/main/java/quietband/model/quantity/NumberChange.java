package quietband.model.quantity;

/**
 * One change of a quantity: set it, multiply it by 1 + value, or add.
 *
 * @param of    path of the quantity
 * @param act   how the value acts
 * @param value in the base unit of the quantity's dimension; a ratio for scale
 */
public record NumberChange(String of, Act act, double value) {

    /** What a change does. */
    public enum Act { SET, SCALE, ADD }
}
