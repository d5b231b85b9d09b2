/**
 * Passes over time and what they find: sweep, dwell, vibration, shock, record.
 */
package quietband.motion.run;
