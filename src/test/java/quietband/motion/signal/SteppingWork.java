package quietband.motion.signal;

import quietband.model.Design;
import quietband.motion.drive.Drive;
import quietband.motion.drive.NoiseDrive;
import quietband.motion.run.SimulationPass;

/** Stepping alone, for benchmarks: three axes of noise made beforehand, all stacks, nothing recorded. */
public final class SteppingWork {

    private final Design design;
    private final TimeStepping plan;
    private final int points;
    private final double[][] value = new double[3][];
    private final double[][] slope = new double[3][];

    /**
     * Prepares noise.
     *
     * @param gridHz  points of the time grid per second
     * @param seconds how long one pass is
     */
    public SteppingWork(Design design, boolean linear, double gridHz, double seconds) {
        this.design = design;
        double h = 1 / gridHz;
        points = (int) Math.round(seconds * gridHz);
        plan = new TimeStepping(h, linear, LossModel.fit(design.requirement().toHz()), true, design.requirement().fromHz() / 2, points,
            false);
        NoiseDrive noise = new NoiseDrive(design.vibration().random(), h, 1 << 15, 1);
        BlockSignal[] block = BlockSignal.several(3);
        int blocks = points / BlockSignal.BLOCK + 200;
        for (int i = 0; i < 3; i++) {
            value[i] = new double[blocks * BlockSignal.BLOCK + 1];
            slope[i] = new double[blocks * BlockSignal.BLOCK + 1];
        }
        for (int b = 0; b < blocks; b++) {
            noise.fill((long) b * BlockSignal.BLOCK, BlockSignal.BLOCK, block);
            for (int i = 0; i < 3; i++) {
                System.arraycopy(block[i].value, 0, value[i], b * BlockSignal.BLOCK, BlockSignal.BLOCK + 1);
                System.arraycopy(block[i].slope, 0, slope[i], b * BlockSignal.BLOCK, BlockSignal.BLOCK + 1);
            }
        }
    }

    /** One pass; the sum of squares of the fullest stack, so that nothing is left out. */
    public double run() {
        double[] sum = new double[1];
        new SimulationPass(design, plan).run(new Played(), points, frame -> {
            double[] y = frame.y()[frame.y().length - 1];
            for (double v : y) {
                sum[0] += v * v;
            }
            return true;
        });
        return sum[0];
    }

    /** Plays what was prepared. */
    private final class Played implements Drive {

        @Override
        public boolean[] used() {
            return new boolean[] {true, true, true};
        }

        @Override
        public void fill(long step, int n, BlockSignal[] axes) {
            int from = (int) (step % (value[0].length - 1 - n));
            for (int i = 0; i < 3; i++) {
                System.arraycopy(value[i], from, axes[i].value, 0, n + 1);
                System.arraycopy(slope[i], from, axes[i].slope, 0, n + 1);
            }
        }
    }
}
