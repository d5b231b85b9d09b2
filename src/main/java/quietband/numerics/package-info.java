/**
 * Numerical methods that no library here has: second-order cone programs, bounded search, evolution strategy,
 * normal curve, polynomial roots.
 *
 * <p>Equations: physics.md, Filter design, Time domain, Tolerances.
 */
package quietband.numerics;
