package quietband.identification.shaker;

import quietband.model.Axis;

/**
 * One reading of a resonator on the shaker or turned over; what was not read is NaN.
 *
 * @param serial      of the resonator; empty when the run is of one alone
 * @param line        in the file, from 1
 * @param axis        along which it was shaken, or which pointed up or down
 * @param frequencyHz of the vibration, Hz; NaN for a tip-over reading
 * @param peakG       peak acceleration along the axis, g
 * @param sidebandDbc level of one first-order sideband over the carrier, dBc
 * @param phase       of the frequency's deviation against the acceleration, rad
 * @param floorDbc    noise floor of the analyser at the sideband, dBc
 * @param sigmaDb     standard uncertainty of the reading, dB
 * @param cross       in-phase motion along x, y, z over that along the axis, signed; 0 where not measured (length 3)
 * @param crossRead   whether cross-axis motion was measured
 * @param sense       +1 with the axis up, -1 with it down, 0 for a sideband
 * @param outputHz    output frequency at rest, Hz
 * @param time        of a tip-over reading, s
 */
public record ShakerReading(String serial, int line, Axis axis, double frequencyHz, double peakG, double sidebandDbc, double phase,
                            double floorDbc, double sigmaDb, double[] cross, boolean crossRead, int sense, double outputHz,
                            double time) {

    /** Whether it is a tip-over reading. */
    public boolean turnOver() {
        return sense != 0;
    }
}
