package quietband.motion.drive;

import quietband.motion.signal.BlockSignal;

/** A recording played from grid point 0 on; at rest after its end. */
public final class MotionRecordDrive implements Drive {

    private final MotionRecord r;
    private final double step;
    private int at;

    public MotionRecordDrive(MotionRecord recording, double step) {
        this.r = recording;
        this.step = step;
    }

    @Override
    public boolean[] used() {
        return new boolean[] {r.value()[0] != null, r.value()[1] != null, r.value()[2] != null};
    }

    @Override
    public void fill(long first, int n, BlockSignal[] axes) {
        double[] t = r.time();
        for (int k = 0; k <= n; k++) {
            double now = t[0] + (first + k) * step;
            while (at > 0 && t[at] > now) {
                at--;
            }
            while (at < t.length - 2 && t[at + 1] <= now) {
                at++;
            }
            for (int i = 0; i < 3; i++) {
                if (r.value()[i] != null) {
                    write(axes[i], k, r.value()[i], r.bend()[i], now);
                }
            }
        }
    }

    private void write(BlockSignal s, int k, double[] v, double[] m, double now) {
        double[] t = r.time();
        if (now > t[t.length - 1]) {
            s.value[k] = 0;
            s.slope[k] = 0;
            return;
        }
        double h = t[at + 1] - t[at];
        double b = (now - t[at]) / h;
        double a = 1 - b;
        s.value[k] = a * v[at] + b * v[at + 1] + ((a * a * a - a) * m[at] + (b * b * b - b) * m[at + 1]) * h * h / 6;
        s.slope[k] = step * ((v[at + 1] - v[at]) / h + ((3 * b * b - 1) * m[at + 1] - (3 * a * a - 1) * m[at]) * h / 6);
    }
}
