/**
 * One unit in one condition: residual and phase noise at their worst points over their limits, found between the nodes of a grid by a
 * polynomial in log f through one over the power; jitter, tones, travel, sensor range and tuning swing as shares of their limits. What
 * no unit can fail, or every unit fails, is settled beforehand. For other rooms: {@link quietband.tolerance.judge.MonteCarloPlan} (what
 * all threads share), {@link quietband.tolerance.judge.UnitJudge} (of one thread) and
 * {@link quietband.tolerance.judge.UnitVerdict} (margin in dB, place, what failed).
 */
package quietband.tolerance.judge;
