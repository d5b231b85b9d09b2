/**
 * What a measured lot comes to: sorted, with what other limits and guard bands would give. Main type: {@link SortStudy}.
 */
package quietband.study.lot;
