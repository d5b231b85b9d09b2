/**
 * One design in the frequency domain: the residual sensitivity of every stack, its causes, the tables over
 * frequency and the program's own grid. Main type: {@link quietband.response.ResidualResponse}.
 *
 * <p>Equations: physics.md, Residual, Causes, Sensors, Frequency grids.
 */
package quietband.response;
