/**
 * Results of sort.
 */
package quietband.report.lot;
