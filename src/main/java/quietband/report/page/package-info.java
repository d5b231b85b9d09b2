/**
 * Pages from templates; names, cautions and verdicts as people read them.
 */
package quietband.report.page;
