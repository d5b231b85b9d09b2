/**
 * How much error of gain, phase and delay the path may have until the limit is just met, where platform and
 * cancellation cross over, and which sign of the path is right.
 *
 * <p>Equations: physics.md, Filter design, Residual.
 *
 * <p>For other rooms: {@link quietband.filter.allowed.AllowedErrors},
 * {@link quietband.filter.allowed.ErrorBounds}, {@link quietband.filter.allowed.Crossover}.
 *
 * <p>With them: {@link quietband.filter.allowed.PolarityCheck}.
 */
package quietband.filter.allowed;
