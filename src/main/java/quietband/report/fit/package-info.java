/**
 * Results of fit.
 */
package quietband.report.fit;
