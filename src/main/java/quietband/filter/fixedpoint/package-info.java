/**
 * Coefficients and signals of a filter as whole numbers: scaling, rounding, largest gain, and the word length that
 * costs little.
 *
 * <p>Equations: physics.md, Cancellation path, Filter design.
 *
 * <p>For other rooms: {@link quietband.filter.fixedpoint.FixedPoint},
 * {@link quietband.filter.fixedpoint.FilterPeaks}, {@link quietband.filter.fixedpoint.FixedDesign}.
 *
 * <p>With them: {@link quietband.filter.fixedpoint.FoundFilters}.
 */
package quietband.filter.fixedpoint;
