/**
 * What a design leaves, where it holds, what it lacks and what would mend that.
 *
 * <p>For other rooms: {@link quietband.study.assess.DesignAssessment},
 * {@link quietband.study.assess.NeededAttenuation}, {@link quietband.study.assess.KnownYield}.
 * With them: {@link quietband.study.assess.ExpectedResonances}.
 */
package quietband.study.assess;
