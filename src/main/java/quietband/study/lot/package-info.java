/**
 * What a measured lot comes to: sorted, with what other limits and guard bands would give.
 *
 * <p>For other rooms: {@link quietband.study.lot.SortStudy}.
 */
package quietband.study.lot;
