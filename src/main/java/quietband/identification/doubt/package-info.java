/**
 * Whether a measurement can be what it is said to be, and what is doubtful about a fit.
 */
package quietband.identification.doubt;
