package quietband.motion.platform;

/**
 * What a stop or a compression-only spring did in a pass.
 *
 * @param label    which
 * @param stop     a bump stop, else a compression-only spring
 * @param times    how often it was touched or went slack
 * @param duration for how long altogether, s
 */
public record ContactRecord(String label, boolean stop, long times, double duration) { }
