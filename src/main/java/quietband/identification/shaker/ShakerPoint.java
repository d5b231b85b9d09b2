package quietband.identification.shaker;

/**
 * A sideband reading worked out.
 *
 * @param reading   as read
 * @param index     modulation index at which it was read, rad
 * @param perG      sensitivity by this reading alone, cross-axis motion taken out where it was measured, 1/g, at least 0
 * @param fittedG   the fitted curve there, 1/g
 * @param mark      why it is not used; USED when it is
 */
public record ShakerPoint(ShakerReading reading, double index, double perG, double fittedG, Mark mark) {

    /** What was found out about a reading. */
    public enum Mark {
        /** Counts. */
        USED,
        /** Too near the noise floor: mostly noise. */
        NOISE_FLOOR,
        /** The sideband is above the carrier: near the carrier's null, where a level no longer tells the index. */
        CARRIER_NULL
    }
}
