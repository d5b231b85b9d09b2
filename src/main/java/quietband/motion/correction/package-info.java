/**
 * The cancellation at work over time: sensors that clip, converter, digital filter, hold, tuning port with its
 * curvature; the resonator on its support.
 *
 * <p>Equations: physics.md, Time domain, Tuning port, Resonator.
 */
package quietband.motion.correction;
