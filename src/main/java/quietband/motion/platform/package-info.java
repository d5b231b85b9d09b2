/**
 * The platform relative to its housing as first-order equations, stops and slack springs included.
 */
package quietband.motion.platform;
