package quietband.response;

import java.util.Arrays;
import quietband.spectrum.FrequencyQuadrature;

/** Integrals over frequency of several parts in one pass, so that the platform is solved once for all of them. */
public final class FrequencyIntegrals {

    /** Some integrands over a range of their own. */
    public interface Part {

        /** How many integrands. */
        int count();

        /** Lower end of the range in Hz. */
        double fromHz();

        /** Upper end of the range in Hz; nothing is integrated unless it is above the lower one. */
        double toHz();

        /** Writes the values at a frequency in Hz within the range, from an offset on. */
        void at(double f, double[] into, int offset);

        /** Whether there is anything to integrate. */
        default boolean asked() {
            return count() > 0 && toHz() > fromHz();
        }
    }

    private FrequencyIntegrals() { }

    /** The integrals of each part, on the design's own grid with every end of a range as a node. */
    public static double[][] of(GridSeeds seeds, Part... parts) {
        double from = Double.POSITIVE_INFINITY;
        double to = 0;
        int count = 0;
        for (Part part : parts) {
            count += part.count();
            from = part.asked() ? Math.min(from, part.fromHz()) : from;
            to = part.asked() ? Math.max(to, part.toHz()) : to;
        }
        double[] all = to > from ? FrequencyQuadrature.integrate(seeds.through(from, to, ends(parts)), count, (f, into) -> {
            int offset = 0;
            for (Part part : parts) {
                if (part.asked() && f >= part.fromHz() && f <= part.toHz()) {
                    part.at(f, into, offset);
                } else {
                    Arrays.fill(into, offset, offset + part.count(), 0);
                }
                offset += part.count();
            }
        }) : new double[count];
        double[][] each = new double[parts.length][];
        int offset = 0;
        for (int p = 0; p < parts.length; p++) {
            each[p] = Arrays.copyOfRange(all, offset, offset += parts[p].count());
        }
        return each;
    }

    private static double[] ends(Part... parts) {
        return Arrays.stream(parts).filter(Part::asked).flatMapToDouble(p -> Arrays.stream(new double[] {p.fromHz(), p.toHz()}))
            .toArray();
    }
}
