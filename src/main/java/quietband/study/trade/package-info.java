/**
 * The best design within bounds, by margin or by yield. Main type: {@link DesignSearch}.
 */
package quietband.study.trade;
