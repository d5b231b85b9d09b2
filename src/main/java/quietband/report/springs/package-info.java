/**
 * Results of springs.
 */
package quietband.report.springs;
