/**
 * Which tolerance costs the most: Sobol indices, halving, likeliest failing unit.
 */
package quietband.tolerance.influence;
