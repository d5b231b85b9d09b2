package quietband.motion;

/** Is told how far a pass has come and may stop it. */
@FunctionalInterface
public interface Monitor {

    /** Says nothing and never stops. */
    Monitor NONE = share -> true;

    /**
     * Some progress.
     *
     * @param share done, 0 to 1
     * @return false to stop
     */
    boolean progress(double share);
}
