/**
 * One unit in one condition: residual and phase noise at their worst points over their limits, found between the
 * nodes of a grid by a polynomial in log f through one over the power; jitter, tones, travel, sensor range and
 * tuning swing as shares of their limits. What no unit can fail, or every unit fails, is settled beforehand.
 *
 * <p>Equations: physics.md, Tolerances, Requirements.
 *
 * <p>For other rooms: {@link quietband.tolerance.judge.MonteCarloPlan}.
 *
 * <p>With them: {@link quietband.tolerance.judge.RequirementKind}, {@link quietband.tolerance.judge.UnitVerdict}.
 */
package quietband.tolerance.judge;
