/**
 * From a wanted natural frequency, reduction or requirement to rates, damping, ballast and parts.
 */
package quietband.tuning.springs;
