/**
 * A unit as a pure function of seed and index: independent standard normals from a counter-based stream, mixed by the Cholesky factor
 * of the correlation matrix, bent to each tolerance's distribution, acting on the design's numbers in the order of the file. For other
 * rooms: {@link quietband.tolerance.draw.ToleranceDraws} and {@link quietband.tolerance.draw.VariedParts} (what units do not share).
 */
package quietband.tolerance.draw;
