/**
 * Design goals and bounds as second-order cones over the unknowns of three filters.
 */
package quietband.filter.goal;
