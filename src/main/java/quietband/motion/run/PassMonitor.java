package quietband.motion.run;

/** Is told how far a pass has come and may stop it. */
@FunctionalInterface
public interface PassMonitor {

    /** Says nothing and never stops. */
    PassMonitor NONE = share -> true;

    /**
     * Some progress.
     *
     * @param share done, 0 to 1
     * @return false to stop
     */
    boolean progress(double share);
}
