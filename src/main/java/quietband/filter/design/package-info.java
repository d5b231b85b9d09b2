/**
 * The whole task: checks, the search for three filters together, facts about what was found, and the changed
 * model.
 *
 * <p>Equations: physics.md, Filter design.
 *
 * <p>For other rooms: {@link quietband.filter.design.FilterDesigner},
 * {@link quietband.filter.design.FilteredModel}.
 *
 * <p>With them: {@link quietband.filter.design.AddedNoise}, {@link quietband.filter.design.FilterFacts},
 * {@link quietband.filter.design.FilterResult}.
 */
package quietband.filter.design;
