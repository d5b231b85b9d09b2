/**
 * Second-order sections: the search for stable poles, and the numerators that suit them best.
 *
 * <p>Equations: physics.md, Filter design, Cancellation path.
 */
package quietband.filter.sections;
