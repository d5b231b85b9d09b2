/**
 * Results of filter and trim.
 */
package quietband.report.filter;
