package quietband.motion.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.correction.CancellationRun;
import quietband.motion.correction.ResonatorRun;
import quietband.motion.correction.SensorChannel;
import quietband.motion.drive.Drive;
import quietband.motion.platform.PlatformModel;
import quietband.motion.platform.PlatformStage;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;
import quietband.motion.signal.SignalStream;
import quietband.motion.signal.TimeStepping;

/**
 * One pass: all stacks of a design on the same drive. Block by block the drive moves housing and platform; crystal and
 * cancellation of the bolted and of the sprung stacks follow; what the cancellation needs of the future (delays, a constant phase) makes
 * the result come later.
 */
public final class SimulationPass {

    private final List<Stack> stacks;
    private final TimeStepping plan;
    private final PlatformStage platform;
    private final Chain bolted;
    private final Chain sprung;
    private final List<Chain> chains;
    private final boolean sensorOnPlatform;
    private final List<double[]> crystalRows;
    private final List<double[]> sensorRows;
    private final BlockSignal[] atCrystal;
    private final BlockSignal[] atSensor;
    private final BlockSignal[] drive = BlockSignal.several(3);
    private final SignalStream[] driven = {new SignalStream(), new SignalStream(), new SignalStream()};
    private final SignalStream[] moved = {new SignalStream(), new SignalStream(), new SignalStream()};
    private long step;
    private long emitted;

    /** Crystal and cancellation (null without one) of the bolted or of the sprung stacks. */
    private record Chain(ResonatorRun crystal, CancellationRun correction, SignalStream y) {

        static Chain of(Design design, TimeStepping plan) {
            return new Chain(new ResonatorRun(design, plan.step()),
                design.cancellation().isPresent() ? new CancellationRun(design, plan) : null, new SignalStream());
        }

        void settle(GridSinusoid[] atCrystal, GridSinusoid[] atSensor, double theta) {
            crystal.settle(atCrystal, theta);
            if (correction != null) {
                correction.settle(atSensor, theta);
            }
        }

        void run(BlockSignal[] atCrystal, BlockSignal[] atSensor, long step, int n, boolean averaged) {
            crystal.run(atCrystal, n);
            crystal.give(y, n, correction != null && averaged);
            if (correction != null) {
                correction.run(atSensor, step, n);
            }
        }

        long known() {
            return correction == null ? y.end() : Math.min(correction.grid().end(), y.end());
        }

        void dropBefore(long point) {
            y.dropBefore(point);
            crystal.plain().dropBefore(point);
            if (correction != null) {
                correction.grid().dropBefore(point);
            }
        }
    }

    public SimulationPass(Design design, TimeStepping plan) {
        this(design, plan, design.platform().isPresent() ? PlatformModel.of(design, plan) : null);
    }

    /** With the platform's equations worked out before; null without a platform. */
    public SimulationPass(Design design, TimeStepping plan, PlatformModel model) {
        this.plan = plan;
        stacks = Stack.of(design);
        platform = model == null ? null : new PlatformStage(design.platform().orElseThrow(), model, plan);
        crystalRows = ResonatorRun.rows(design);
        atCrystal = BlockSignal.several(crystalRows.size());
        bolted = Chain.of(design, plan);
        sprung = platform == null ? null : Chain.of(design, plan);
        chains = platform == null ? List.of(bolted) : List.of(bolted, sprung);
        sensorRows = bolted.correction == null ? List.of() : bolted.correction.rows();
        atSensor = BlockSignal.several(sensorRows.size());
        sensorOnPlatform = design.cancellation().map(c -> c.sensor().onPlatform()).orElse(false);
    }

    /** Starts in the periodic state under sinusoids. */
    void settle(GridSinusoid[] housing, double theta) {
        GridSinusoid[] onHousing = mixed(sensorRows, housing);
        bolted.settle(mixed(crystalRows, housing), onHousing, theta);
        if (platform != null) {
            platform.settle(housing, theta);
            sprung.settle(platform.settledResonator(), sensorOnPlatform ? platform.settledSensor() : onHousing, theta);
        }
    }

    private static GridSinusoid[] mixed(List<double[]> rows, GridSinusoid[] a) {
        return rows.stream().map(r -> SensorChannel.mix(r, a)).toArray(GridSinusoid[]::new);
    }

    /** Steps on until frames with so many points altogether have been given, or the sink wants no more. */
    public void run(Drive source, long points, GridBlock.Sink sink) {
        boolean more = true;
        long lag = lag();
        while (more && emitted < points) {
            int n = source.smooth(step, BlockSignal.BLOCK);
            source.fill(step, n, drive);
            block(source.used(), n);
            step += n;
            if (step >= points + lag) {
                finish();
            }
            more = emit(points, sink);
        }
    }

    private void block(boolean[] used, int n) {
        for (int i = 0; i < atCrystal.length; i++) {
            SensorChannel.mix(crystalRows.get(i), drive, atCrystal[i], n);
        }
        for (int i = 0; i < atSensor.length; i++) {
            SensorChannel.mix(sensorRows.get(i), drive, atSensor[i], n);
        }
        bolted.run(atCrystal, atSensor, step, n, plan.averaged());
        if (platform != null) {
            platform.run(drive, used, n);
            sprung.run(platform.resonator(), sensorOnPlatform ? platform.sensor() : atSensor, step, n, plan.averaged());
        }
        for (int i = 0; i < 3; i++) {
            driven[i].push(drive[i].value, n);
            if (platform != null) {
                moved[i].push(platform.seen()[i], n);
            }
        }
    }

    private void finish() {
        chains.stream().map(Chain::correction).filter(Objects::nonNull).forEach(CancellationRun::finish);
    }

    private boolean emit(long points, GridBlock.Sink sink) {
        long known = Math.min(points, driven[0].end());
        for (Chain chain : chains) {
            known = Math.min(known, chain.known());
        }
        boolean more = true;
        while (more && emitted < known) {
            int n = (int) Math.min(4L * BlockSignal.BLOCK, known - emitted);
            more = sink.accept(frame(n));
            emitted += n;
            forget();
        }
        return more;
    }

    private GridBlock frame(int n) {
        double[][] a = new double[3][n];
        double[][] q = new double[3][n];
        for (int i = 0; i < 3; i++) {
            driven[i].copy(emitted, n, a[i]);
            if (platform != null) {
                moved[i].copy(emitted, n, q[i]);
            }
        }
        double[][] y = new double[stacks.size()][n];
        for (int s = 0; s < y.length; s++) {
            Stack stack = stacks.get(s);
            Chain chain = stack.sprung() ? sprung : bolted;
            (stack.corrected() ? chain.y : chain.crystal.plain()).copy(emitted, n, y[s]);
            if (stack.corrected()) {
                SignalStream taken = chain.correction.grid();
                for (int k = 0; k < n; k++) {
                    y[s][k] -= taken.get(emitted + k);
                }
            }
        }
        return new GridBlock(emitted, n, a, q, stacks, y);
    }

    private void forget() {
        for (int i = 0; i < 3; i++) {
            driven[i].dropBefore(emitted);
            moved[i].dropBefore(emitted);
        }
        chains.forEach(chain -> chain.dropBefore(emitted));
    }

    /** Grid steps that the result comes after the drive. */
    long lag() {
        return bolted.correction == null ? 0 : bolted.correction.lag();
    }

    Optional<PlatformStage> platform() {
        return Optional.ofNullable(platform);
    }

    /** The cancellation of a corrected stack. */
    CancellationRun correction(Stack stack) {
        return (stack.sprung() ? sprung : bolted).correction;
    }

    List<Stack> stacks() {
        return new ArrayList<>(stacks);
    }
}
