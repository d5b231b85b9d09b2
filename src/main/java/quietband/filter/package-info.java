/**
 * The cancellation filter: what the residual asks of it, and what a candidate leaves.
 */
package quietband.filter;
