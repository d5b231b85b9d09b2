/**
 * The equations of one unit on blocks of frequencies, in plain arrays. With D the dynamic stiffness, N what drives
 * the motion, c the resonator and s the cancellation, the residual of drive j is {@code c_j - s_j + w^2 (D^-1 g)^T
 * N_j}, {@code g = B(p_c)^T c - B(p_s)^T s}: one solve for all three drives. Springs with mass add {@code k* b cot
 * b} and {@code m tan(b/2)/b}.
 *
 * <p>Equations: physics.md, Platform motion, Residual, Springs.
 */
package quietband.tolerance.kernel;
