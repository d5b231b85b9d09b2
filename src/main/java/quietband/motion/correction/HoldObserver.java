package quietband.motion.correction;

/** Looks at each step of the staircase before the tuning port. */
@FunctionalInterface
public interface HoldObserver {

    /**
     * One step.
     *
     * @param k     its number: it lasts from k/fs to (k + 1)/fs
     * @param level the staircase's level
     * @param start value behind the port's pole at the step's start
     */
    void step(long k, double level, double start);
}
