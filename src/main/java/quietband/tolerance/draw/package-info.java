/**
 * A unit as a pure function of seed and index: independent standard normals from a counter-based stream, mixed by
 * the Cholesky factor of the correlation matrix, bent to each tolerance's distribution, acting on the design's
 * numbers in the order of the file.
 *
 * <p>Equations: physics.md, Tolerances.
 *
 * <p>For other rooms: {@link quietband.tolerance.draw.ToleranceException}.
 */
package quietband.tolerance.draw;
