/**
 * Results of compare.
 */
package quietband.report.compare;
