package quietband.motion;

import java.util.List;
import quietband.model.Stack;
import quietband.model.Vec;

/** What a pass met besides its signals. */
final class Findings {

    private Findings() { }

    static List<ContactRecord> contacts(Engine engine) {
        return engine.platform().filter(p -> p.contact() != null).map(p -> p.contact().records()).orElse(List.of());
    }

    /** Sensor samples and port values clipped, over both corrections. */
    static long[] clipped(Engine engine) {
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

    static Vec travel(Engine engine) {
        return engine.platform().map(p -> p.travel().peak()).orElse(Vec.ZERO);
    }
}
