/**
 * The result of assess: tables, summary, charts, page.
 */
package quietband.report.assess;
