/**
 * Charts over frequency, time and two quantities, in one look.
 */
package quietband.report.chart;
