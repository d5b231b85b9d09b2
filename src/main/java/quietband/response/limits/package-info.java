/**
 * How hard a design can be driven: tuning port, curvature, dwell levels.
 */
package quietband.response.limits;
