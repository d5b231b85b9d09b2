/**
 * The result of assess: tables, summary, charts, the page and the text for a terminal.
 *
 * <p>For other rooms: {@link quietband.report.assess.AssessmentFiles},
 * {@link quietband.report.assess.AssessmentText}.
 *
 * <p>With them: {@link quietband.report.assess.GapLine}, {@link quietband.report.assess.NeededAttenuation}.
 */
package quietband.report.assess;
