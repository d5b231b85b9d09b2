/**
 * Gaps in the coverage, their leading cause, and the smallest change that meets the limit.
 */
package quietband.tuning.cures;
