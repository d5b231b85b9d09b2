/**
 * Threads: work shared evenly, parts that run in the background, how many workers. Figures never depend on their
 * number. Main type: {@link quietband.work.ParallelWork}.
 */
package quietband.work;
