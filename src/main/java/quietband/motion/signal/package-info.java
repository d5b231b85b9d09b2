/**
 * Blocks of continuous signals, linear systems in exact steps, periodic steady states.
 */
package quietband.motion.signal;
