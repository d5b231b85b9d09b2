package quietband.motion.run;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Stack;
import quietband.motion.signal.SignalStream;
import quietband.spectrum.Decimator;
import quietband.spectrum.Welch;

/** Follows a pass: peaks, rms, the decimated trace and the averaged spectra. */
final class PassRecorder implements GridBlock.Sink {

    /**
     * What is kept.
     *
     * @param step    of the grid, s
     * @param skip    grid points that count neither in peaks nor in spectra (start-up)
     * @param factor  decimation
     * @param passHz  upper end of what the trace keeps, Hz
     * @param rows    most rows of the trace
     * @param segment samples (decimated) in a segment of the spectra; 0 for no spectra
     */
    record Keep(double step, long skip, int factor, double passHz, int rows, int segment) { }

    private final List<Stack> stacks;
    private final Keep keep;
    private final Decimator decimator;
    private final Welch welch;
    private final double[] peak;
    private final double[] square;
    private final List<SignalStream> columns = new ArrayList<>();
    private final double[] spectral;
    private final double[][] channels;
    private long counted;
    private boolean partial;

    PassRecorder(List<Stack> stacks, Keep keep) {
        this.stacks = stacks;
        this.keep = keep;
        int count = 6 + stacks.size();
        peak = new double[stacks.size()];
        square = new double[stacks.size()];
        for (int i = 0; i < count; i++) {
            columns.add(new SignalStream());
        }
        channels = new double[count][];
        spectral = new double[3 + stacks.size()];
        welch = keep.segment == 0 ? null
            : new Welch(3 + stacks.size(), 3, keep.segment, 1 / (keep.step * keep.factor));
        decimator = new Decimator(count, keep.factor, keep.passHz * keep.step, this::decimated);
    }

    /** The largest factor that leaves a rate of four times the highest frequency of interest. */
    static int factor(double step, double topHz) {
        return (int) Math.max(1, Math.floor(1 / (step * 4 * topHz)));
    }

    @Override
    public boolean accept(GridBlock f) {
        for (int s = 0; s < stacks.size(); s++) {
            double[] y = f.y()[s];
            for (int k = (int) Math.max(0, Math.min(f.n(), keep.skip - f.first())); k < f.n(); k++) {
                peak[s] = Math.max(peak[s], Math.abs(y[k]));
                square[s] += y[k] * y[k];
            }
            channels[6 + s] = y;
        }
        counted += Math.max(0, f.first() + f.n() - Math.max(keep.skip, f.first()));
        for (int i = 0; i < 3; i++) {
            channels[i] = f.drive()[i];
            channels[3 + i] = f.motion()[i];
        }
        if (welch != null || columns.get(0).end() < keep.rows) {
            decimator.push(channels, f.n());
        } else {
            partial = true;
        }
        return true;
    }

    private void decimated(long number, double[] values) {
        if (columns.get(0).end() < keep.rows) {
            for (int i = 0; i < values.length; i++) {
                columns.get(i).push(values[i]);
            }
        } else {
            partial = true;
        }
        if (welch != null && number * keep.factor >= keep.skip) {
            System.arraycopy(values, 0, spectral, 0, 3);
            System.arraycopy(values, 6, spectral, 3, stacks.size());
            welch.push(spectral);
        }
    }

    /** Ends the trace; once. */
    void finish() {
        if (!partial) {
            decimator.finish();
        }
    }

    double[] peak() {
        return peak;
    }

    double[] rms() {
        double[] rms = new double[square.length];
        for (int s = 0; s < rms.length; s++) {
            rms[s] = Math.sqrt(square[s] / Math.max(1, counted));
        }
        return rms;
    }

    /** The averaged spectra (three drives, then the stacks); null when not asked for. */
    Welch welch() {
        return welch;
    }

    MotionTrace trace() {
        double[][] all = new double[columns.size()][];
        for (int i = 0; i < all.length; i++) {
            all[i] = new double[(int) columns.get(i).end()];
            columns.get(i).copy(0, all[i].length, all[i]);
        }
        double[][] y = new double[stacks.size()][];
        System.arraycopy(all, 6, y, 0, y.length);
        return new MotionTrace(stacks, 1 / (keep.step * keep.factor), 0, new double[][] {all[0], all[1], all[2]},
            new double[][] {all[3], all[4], all[5]}, y, partial);
    }
}
