/**
 * From sideband and tip-over readings to sensitivity per axis with its uncertainty and the resonances of the
 * support; the test plan for a model.
 *
 * <p>Equations: physics.md, Readings and lots, Resonator.
 *
 * <p>For other rooms: {@link quietband.identification.shaker.ShakerAnalysis},
 * {@link quietband.identification.shaker.ShakerFile}, {@link quietband.identification.shaker.TestPlan}.
 *
 * <p>With them: {@link quietband.identification.shaker.AxisSensitivity},
 * {@link quietband.identification.shaker.ResonatorSensitivity},
 * {@link quietband.identification.shaker.ShakerPoint}, {@link quietband.identification.shaker.ShakerReading},
 * {@link quietband.identification.shaker.ShakerRules}, {@link quietband.identification.shaker.TipOver}.
 */
package quietband.identification.shaker;
