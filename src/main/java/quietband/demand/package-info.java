/**
 * What is asked and how far a value is from it: limits over frequency, decibels, margins, requirements met or not.
 */
package quietband.demand;
