/**
 * What moves the housing: sine, noise, pulse, record.
 */
package quietband.motion.drive;
