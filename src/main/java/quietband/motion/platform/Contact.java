package quietband.motion.platform;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Platform;

/**
 * Something that changes the platform's equations while it is displaced beyond a threshold: a bump stop that is touched, or a
 * compression-only spring that has gone slack (whose force then stays what it was at the threshold). While
 * {@code row r > threshold} the platform feels the extra force {@code -stiffness (row r - threshold) - damping row r'}
 * along the row; a slack spring takes away its own stiffness and damping, so that both are negative.
 *
 * @param label     how messages call it
 * @param row       direction (length 6)
 * @param threshold m
 * @param stiffness N/m
 * @param damping   N s/m
 * @param spring    number of the spring in the platform; -1 for a stop
 */
record Contact(String label, double[] row, double threshold, double stiffness, double damping, int spring) {

    /** The stops of a platform, both ways on each axis; empty unless it has clearance and stops. */
    static List<Contact> stops(Platform p) {
        List<Contact> list = new ArrayList<>();
        if (p.clearance().isEmpty() || p.stops().isEmpty()) {
            return list;
        }
        for (int i = 0; i < 3; i++) {
            double k = p.stops().get().stiffness().get(i);
            if (k > 0) {
                double c = 2 * p.stops().get().dampingRatio().get(i) * Math.sqrt(k * p.mass());
                for (int sign : new int[] {1, -1}) {
                    double[] row = new double[6];
                    row[i] = sign;
                    list.add(new Contact("stop " + (sign > 0 ? "+" : "-") + "xyz".charAt(i), row,
                        p.clearance().get().get(i), k, c, -1));
                }
            }
        }
        return list;
    }

    /** Whether it is a bump stop, else a compression-only spring. */
    boolean stop() {
        return spring < 0;
    }
}
