/**
 * The platform relative to its housing as first-order equations: loss factors, relaxation, waves of massive
 * springs, stops and slack springs.
 *
 * <p>Equations: physics.md, Time domain, Springs.
 *
 * <p>For other rooms: {@link quietband.motion.platform.ContactRecord}.
 */
package quietband.motion.platform;
