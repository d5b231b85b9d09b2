/**
 * Pages from templates; names of stacks and causes, cautions and verdicts as people read them.
 *
 * <p>For other rooms: {@link quietband.report.page.Caution}, {@link quietband.report.page.VerdictSentence}.
 *
 * <p>With them: {@link quietband.report.page.CauseName}, {@link quietband.report.page.Report}.
 */
package quietband.report.page;
