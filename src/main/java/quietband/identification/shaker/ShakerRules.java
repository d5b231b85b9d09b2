package quietband.identification.shaker;

/**
 * How readings are worked out.
 *
 * @param carrierHz     frequency of the oscillator, Hz, above 0
 * @param multiplier    what it is multiplied by before it is read, above 0
 * @param floorDbc      noise floor where a row states none, dBc; NaN for none
 * @param floorMarginDb how far above the floor a sideband must be to count, dB
 * @param calibration   standard uncertainty of the shaker's acceleration, common to all readings, as a share
 */
public record ShakerRules(double carrierHz, double multiplier, double floorDbc, double floorMarginDb, double calibration) {

    /** Frequency at which sidebands and output are read, Hz. */
    public double readHz() {
        return carrierHz * multiplier;
    }
}
