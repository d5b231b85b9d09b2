/**
 * What yield a design has, and which tolerance costs it.
 *
 * <p>For other rooms: {@link quietband.study.tolerance.ToleranceResult},
 * {@link quietband.study.tolerance.ToleranceStudy}.
 */
package quietband.study.tolerance;
