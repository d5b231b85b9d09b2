/**
 * How much error of gain, phase and delay the path may have, where platform and cancellation cross over, which
 * sign is right.
 */
package quietband.filter.allowed;
