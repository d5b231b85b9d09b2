/**
 * Results of simulate.
 */
package quietband.report.motion;
