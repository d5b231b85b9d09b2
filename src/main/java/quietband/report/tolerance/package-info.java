/**
 * Results of tolerance.
 */
package quietband.report.tolerance;
