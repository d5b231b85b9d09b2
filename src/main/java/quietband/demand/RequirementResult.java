package quietband.demand;

/**
 * One requirement and how it came out.
 *
 * @param name        residual, phase_noise, tones, jitter, travel, sensor_range or tuning_swing
 * @param met         whether it holds
 * @param marginDb    distance to the limit in dB, positive when met, within +-300; NaN where a share is stated instead
 * @param usedShare   value over limit for travel and ranges; NaN where a margin is stated
 * @param value       the worst value, in {@code unit}
 * @param limit       the limit there, in {@code unit}
 * @param unit        of value and limit
 * @param frequencyHz where; NaN when it has no frequency
 * @param axis        x, y, z, vector or all; empty when it has none
 */
public record RequirementResult(String name, boolean met, double marginDb, double usedShare, double value, double limit,
                                String unit, double frequencyHz, String axis) {

    /** A requirement judged by a margin in dB. */
    public static RequirementResult margin(String name, double marginDb, double value, double limit, String unit,
                                    double frequencyHz, String axis) {
        return new RequirementResult(name, marginDb >= -1e-9, Decibels.clamp(marginDb), Double.NaN, value, limit, unit,
            frequencyHz, axis);
    }

    /** A requirement judged by the share of a range that is used. */
    public static RequirementResult share(String name, double value, double limit, String unit, String axis) {
        double share = value == 0 ? 0 : value / limit;
        return new RequirementResult(name, share <= 1, Double.NaN, share, value, limit, unit, Double.NaN, axis);
    }

    /** How far it is over its limit, dB, within +-300; below 0 where it is met. */
    public double overDb() {
        return hasMargin() ? -marginDb : Decibels.ofRatio(usedShare);
    }

    /** Whether a margin in dB is stated (else a used share). */
    public boolean hasMargin() {
        return !Double.isNaN(marginDb);
    }
}
