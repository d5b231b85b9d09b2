/**
 * Which tolerance costs the most: Sobol indices of the worst margin (first order {@code mean(f_B (f_AB - f_A))/V},
 * total {@code mean((f_A - f_AB)^2)/(2V)}), Spearman's rank correlation, the yield with each tolerance halved, and
 * the likeliest failing unit, which is the failing point nearest to the origin of the standard normals.
 *
 * <p>Equations: physics.md, Tolerances.
 *
 * <p>For other rooms: {@link quietband.tolerance.influence.ToleranceInfluence},
 * {@link quietband.tolerance.influence.LikeliestFailure}, {@link quietband.tolerance.influence.SobolIndices}.
 */
package quietband.tolerance.influence;
