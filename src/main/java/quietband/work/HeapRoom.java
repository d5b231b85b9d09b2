package quietband.work;

/** Whether what is about to be kept can fit into the memory that the program may use. */
public final class HeapRoom {

    private static final double SHARE = 0.8;

    private HeapRoom() { }

    /** Whether so many bytes at once are likely to fit. */
    public static boolean holds(double bytes) {
        return bytes <= SHARE * Runtime.getRuntime().maxMemory();
    }
}
