package quietband.motion.platform;

import java.util.Arrays;
import quietband.model.Platform;
import quietband.motion.signal.BlockSignal;
import quietband.motion.signal.GridSinusoid;
import quietband.motion.signal.LinearStage;
import quietband.motion.signal.TimeStepping;

/**
 * The platform in a pass: accelerations at the resonator and at the sensors, displacements, contacts. It moves by the
 * linear equations' exact steps as long as nothing comes near a stop or a seat, and block by block with events where something does.
 */
public final class PlatformStage {

    private final PlatformEquations equations;
    private final LinearStage stage;
    private final ContactStage contact;
    private final PeakDisplacement travel;
    private final BlockSignal[] out;
    private final double[][] watch = new double[6][];
    private final double[][] seen = new double[6][BlockSignal.BLOCK + 1];
    private final int crystals;
    private GridSinusoid[] settled = new GridSinusoid[0];

    public PlatformStage(Platform platform, PlatformModel model, TimeStepping plan) {
        equations = model.equations();
        crystals = model.crystals();
        stage = new LinearStage(model.stage());
        for (int i = 0; i < 6; i++) {
            double[] row = new double[6];
            row[i] = 1;
            watch[i] = stage.inside(equations.displacement(row));
        }
        travel = new PeakDisplacement(platform, model.assembly(), plan.step());
        out = BlockSignal.several(model.rows().size());
        contact = equations.contacts().isEmpty() ? null : new ContactStage(equations, model.rows(), plan.step());
    }

    /** Steps through a block. */
    public void run(BlockSignal[] drive, boolean[] used, int n) {
        if (contact == null) {
            stage.run(drive, used, out, watch, seen, n);
        } else {
            double[] before = stage.state();
            boolean free = contact.acting() == 0;
            if (free) {
                stage.run(drive, used, out, watch, seen, n);
                free = clear(n);
            }
            if (!free) {
                contact.run(before, drive, used, out, seen, n);
                stage.state(before);
            }
        }
        travel.note(seen, n);
    }

    /** Whether nothing reaches its threshold in the block, half the last step's way counted on top. */
    private boolean clear(int n) {
        for (Contact c : equations.contacts()) {
            double last = Double.NaN;
            for (int k = 0; k <= n; k++) {
                double e = 0;
                for (int i = 0; i < 6; i++) {
                    e += c.row()[i] * seen[i][k];
                }
                double way = Double.isNaN(last) ? 0 : Math.abs(e - last);
                if (e + way / 2 >= c.threshold()) {
                    return false;
                }
                last = e;
            }
        }
        return true;
    }

    /**
     * Starts in the periodic state of the linear equations under sinusoids. With stops or seats that this state would
     * reach, the motion starts smaller, short of them.
     */
    public void settle(GridSinusoid[] drive, double theta) {
        settled = stage.settle(drive, theta);
        double share = 1;
        for (Contact c : equations.contacts()) {
            double most = stage.amplitude(stage.inside(equations.displacement(c.row())));
            share = most < c.threshold() ? share : Math.min(share, 0.9 * c.threshold() / most);
        }
        if (share < 1) {
            double[] state = stage.state();
            for (int i = 0; i < state.length; i++) {
                state[i] *= share;
            }
            stage.state(state);
        }
    }

    /** What the resonator takes under the sinusoid of {@link #settle}, one per row of {@code ResonatorRun.rows}. */
    public GridSinusoid[] settledResonator() {
        return Arrays.copyOfRange(settled, 0, crystals);
    }

    /** What the sensors' channels take under the sinusoid of {@link #settle}; none when they are on the housing. */
    public GridSinusoid[] settledSensor() {
        return Arrays.copyOfRange(settled, crystals, settled.length);
    }

    /** What the resonator takes, one signal per row of {@code ResonatorRun.rows}. */
    public BlockSignal[] resonator() {
        return Arrays.copyOfRange(out, 0, crystals);
    }

    /** What the sensors' channels take, g; none when they are on the housing. */
    public BlockSignal[] sensor() {
        return Arrays.copyOfRange(out, crystals, out.length);
    }

    /** Displacement of the centre of gravity (m) and rotation (rad) relative to the housing in the last block. */
    public double[][] seen() {
        return seen;
    }

    public PeakDisplacement travel() {
        return travel;
    }

    public PlatformEquations equations() {
        return equations;
    }

    /** Contacts and their record; null where nothing can touch or go slack. */
    public ContactStage contact() {
        return contact;
    }

    /** Whether the states came apart into pairs (else all step together). */
    public boolean splits() {
        return stage.splits();
    }

    /** The state [Omega eta, eta', s]; a copy. */
    public double[] state() {
        return stage.state();
    }

    /** Sets that state. */
    public void state(double[] s) {
        stage.state(s);
    }
}
