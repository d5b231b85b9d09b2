/**
 * From two shaker runs, cancellation off and on, to gain, phase and delay errors and new weights of one unit.
 *
 * <p>Equations: physics.md, Residual, Fit.
 *
 * <p>For other rooms: {@link quietband.identification.trim.PathTrim},
 * {@link quietband.identification.trim.TrimmedUnit}.
 */
package quietband.identification.trim;
