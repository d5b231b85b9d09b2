/**
 * What yield a design has, and which tolerance costs it. Main type: {@link ToleranceStudy}.
 */
package quietband.study.tolerance;
