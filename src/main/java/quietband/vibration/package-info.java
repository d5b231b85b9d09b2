/** The vibration environment: densities, overall levels and shock pulses as functions of time. */
package quietband.vibration;
