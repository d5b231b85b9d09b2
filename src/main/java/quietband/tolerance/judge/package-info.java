/**
 * One unit in one condition: the worst point over every requirement.
 */
package quietband.tolerance.judge;
