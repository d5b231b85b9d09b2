/**
 * Coil springs, rubber mounts and catalogue springs that make a wanted rate.
 */
package quietband.tuning.parts;
