/**
 * Results of shaker and its test plan.
 */
package quietband.report.shaker;
