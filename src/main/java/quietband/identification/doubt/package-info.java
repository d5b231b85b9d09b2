/**
 * Whether a measurement can be what it is said to be, which kind of damping describes it, and what is doubtful
 * about a fit.
 *
 * <p>Equations: physics.md, Fit.
 *
 * <p>For other rooms: {@link quietband.identification.doubt.DampingKind}.
 */
package quietband.identification.doubt;
