/**
 * Every number of a design by path: its slot, unit and range, and changes of it. Tolerances, sweeps, searches and
 * fits work on these.
 *
 * <p>For other rooms: {@link quietband.model.quantity.Quantities},
 * {@link quietband.model.quantity.SelectedNumbers}, {@link quietband.model.quantity.NumberSlot}.
 *
 * <p>With them: {@link quietband.model.quantity.BadPathException}, {@link quietband.model.quantity.NumberChange},
 * {@link quietband.model.quantity.NumberRange}.
 */
package quietband.model.quantity;
