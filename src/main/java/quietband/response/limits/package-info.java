/**
 * How hard a design can be driven: swing, noise and harmonics of the tuning port, and the level at which a dwell
 * runs out of travel, preload or range.
 *
 * <p>Equations: physics.md, Tuning port, Noise of the cancellation.
 *
 * <p>For other rooms: {@link quietband.response.limits.PortUse}, {@link quietband.response.limits.DwellLimits}.
 */
package quietband.response.limits;
