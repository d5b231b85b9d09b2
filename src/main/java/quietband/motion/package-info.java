/**
 * The time domain: platform, resonator, sensors and cancellation as ordinary differential and difference equations, driven
 * by a translation of the housing. Linear parts take exact steps (matrix exponential) between the points of a time grid,
 * signals between the points are cubics through values and slopes, the digital path runs sample by sample. Nothing here
 * uses the frequency domain. Main types: {@link quietband.motion.run.SimulationPass} (one pass of all stacks),
 * {@link quietband.motion.run.Dwell} (the component at a drive's frequency).
 */
package quietband.motion;
