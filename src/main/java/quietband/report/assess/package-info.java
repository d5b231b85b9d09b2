/**
 * The result of assess: tables, summary, charts, the page and the text for a terminal.
 *
 * <p>For other rooms: {@link quietband.report.assess.AssessmentReport}, {@link quietband.report.assess.GapLine}.
 */
package quietband.report.assess;
