/**
 * The verdict on a design: coverage, worst points, phase noise, tones, jitter, ranges, each requirement judged.
 *
 * <p>Equations: physics.md, Requirements, Sidebands and phase noise, Frequency grids.
 *
 * <p>For other rooms: {@link quietband.response.verdict.Assessor}, {@link quietband.response.verdict.Assessment},
 * {@link quietband.response.verdict.StackVerdict}.
 *
 * <p>With them: {@link quietband.response.verdict.RangeUse}, {@link quietband.response.verdict.ToneSideband},
 * {@link quietband.response.verdict.DesignMargins}.
 */
package quietband.response.verdict;
