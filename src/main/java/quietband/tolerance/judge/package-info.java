/**
 * One unit in one condition: the worst point over everything asked.
 */
package quietband.tolerance.judge;
