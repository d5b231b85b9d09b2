/**
 * Numerical methods that no library here has: cone programs, bounded search, matrix exponential, normal curve.
 */
package quietband.numerics;
