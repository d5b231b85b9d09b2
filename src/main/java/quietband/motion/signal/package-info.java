/**
 * Blocks of continuous signals, linear systems in exact steps, periodic steady states, the quadrature of a signal.
 *
 * <p>Equations: physics.md, Time domain.
 *
 * <p>For other rooms: {@link quietband.motion.signal.NoSteadyStateException}.
 */
package quietband.motion.signal;
