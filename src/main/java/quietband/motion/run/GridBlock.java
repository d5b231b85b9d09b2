package quietband.motion.run;

import java.util.List;
import quietband.model.Stack;

/**
 * What is known of a stretch of the time grid, all of it at the same points.
 *
 * @param first  number of the first point
 * @param n      how many
 * @param drive  acceleration of the housing in g, x, y, z
 * @param motion displacement of the centre of gravity relative to the housing in m, x, y, z; zero without a platform
 * @param stacks order of the fractional frequencies
 * @param y      fractional frequency per stack
 */
public record GridBlock(long first, int n, double[][] drive, double[][] motion, List<Stack> stacks, double[][] y) {

    /** Takes frames in order. */
    @FunctionalInterface
    public interface Sink {
        /** One frame; its arrays are reused afterwards. Returns false to stop the pass. */
        boolean accept(GridBlock frame);
    }
}
