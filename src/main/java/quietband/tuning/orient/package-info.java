/**
 * The orientation of the resonator that serves best, what an angle error costs, supports of the blank and what
 * they see of a shock.
 *
 * <p>Equations: physics.md, Orientation, Resonator.
 *
 * <p>For other rooms: {@link quietband.tuning.orient.Orientation}, {@link quietband.tuning.orient.SupportTable},
 * {@link quietband.tuning.orient.BlankShock}.
 *
 * <p>With them: {@link quietband.tuning.orient.SupportRow}.
 */
package quietband.tuning.orient;
