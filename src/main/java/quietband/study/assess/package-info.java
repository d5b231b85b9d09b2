/**
 * What a design leaves, where it holds, what it lacks and what would mend that. Main type: {@link DesignAssessment}.
 */
package quietband.study.assess;
