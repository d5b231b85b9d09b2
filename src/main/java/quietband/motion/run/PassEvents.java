package quietband.motion.run;

import java.util.List;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.motion.platform.ContactRecord;

/** What a pass met besides its signals. */
final class PassEvents {

    private PassEvents() { }

    static List<ContactRecord> contacts(SimulationPass engine) {
        return engine.platform().filter(p -> p.contact() != null).map(p -> p.contact().records()).orElse(List.of());
    }

    /** Sensor samples and port values clipped, over both cancellations. */
    static long[] clipped(SimulationPass engine) {
        long[] sum = new long[2];
        for (Stack s : engine.stacks()) {
            if (s.corrected()) {
                long[] c = engine.correction(s).clipped();
                sum[0] += c[0];
                sum[1] += c[1];
            }
        }
        return sum;
    }

    static Vec travel(SimulationPass engine) {
        return engine.platform().map(p -> p.travel().peak()).orElse(Vec.ZERO);
    }
}
