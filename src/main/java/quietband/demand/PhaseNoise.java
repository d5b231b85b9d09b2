package quietband.demand;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.cancellation.CancellationNoise;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.oscillator.Sidebands;
import quietband.spectrum.LogCurve;

/**
 * Phase noise at the output, as power ratios per Hz (10 log10 of them is dBc/Hz): what vibration makes of the residual,
 * L = f0^2/(2 f^2) sum_j |y_j|^2 S_a,j, and what is there anyway (oscillator at rest, sensor with converter, port).
 */
public final class PhaseNoise {

    /**
     * One line of the tables: a driven axis, or all of them together.
     *
     * @param label x, y, z or all
     * @param axes  whose power adds up in it
     */
    public record Row(String label, List<Axis> axes) { }

    private final Design design;
    private final double outputHz;
    private final CancellationNoise correction;
    private final List<Optional<LogCurve>> drive = new ArrayList<>();

    /** For one design. */
    public PhaseNoise(Design design) {
        this.design = design;
        this.outputHz = design.oscillator().outputHz();
        this.correction = design.cancellation().map(c -> new CancellationNoise(c, design.weightsPerG())).orElse(null);
        for (Axis axis : Axis.ALL) {
            drive.add(design.vibration().drive(axis));
        }
    }

    /** The rows: each driven axis when they are driven one at a time, else one for all of them. */
    public List<Row> rows() {
        List<Axis> driven = Axis.ALL.stream().filter(design.vibration().axes()::contains).toList();
        return design.vibration().together()
            ? List.of(new Row("all", driven))
            : driven.stream().map(a -> new Row(a.letter(), List.of(a))).toList();
    }

    /** Acceleration density of an axis, g^2/Hz; 0 where it is not driven. */
    public double density(Axis axis, double f) {
        Optional<LogCurve> curve = drive.get(axis.ordinal());
        return curve.isPresent() ? curve.get().at(f) : 0;
    }

    /**
     * What vibration makes.
     *
     * @param squared |y_j|^2 per axis, 1/g^2 (length 3)
     */
    public double vibration(Row row, double f, double[] squared) {
        double sum = 0;
        for (Axis axis : row.axes()) {
            sum += squared[axis.ordinal()] * density(axis, f);
        }
        return Sidebands.phaseNoise(sum, outputHz, f);
    }

    /** Static noise: of the oscillator at rest, multiplied to the output; 0 when not given. */
    public double staticNoise(double f) {
        return design.oscillator().staticPhaseNoise()
            .map(q -> Decibels.power(q.at(f)) * design.oscillator().outputGain()).orElse(0.0);
    }

    /** Sensor and converter; 0 without a cancellation. */
    public double sensor(double f) {
        return correction == null ? 0 : Sidebands.phaseNoise(correction.sensor(f), outputHz, f);
    }

    /** Tuning port; 0 without a cancellation. */
    public double tuning(double f) {
        return correction == null ? 0 : Sidebands.phaseNoise(correction.tuning(f), outputHz, f);
    }

    /** All that is there without vibration in a stack. */
    public double floor(Stack stack, double f) {
        return staticNoise(f) + (stack.corrected() ? sensor(f) + tuning(f) : 0);
    }

    /** The limit in dBc/Hz; empty when none is stated. */
    public Optional<Double> limitDbc(double f) {
        return design.requirement().phaseNoise().map(l -> l.at(f));
    }

    /**
     * The sensitivity that would just meet the phase-noise limit on a row with the fullest stack's floor counted, 1/g: equal on all
     * axes of the row. 0 where the floor alone exceeds, infinite where nothing drives the row or no limit is stated.
     */
    public double allowedPerG(Row row, double f) {
        Optional<Double> limit = limitDbc(f);
        double driven = 0;
        for (Axis axis : row.axes()) {
            driven += density(axis, f);
        }
        if (limit.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double left = Decibels.power(limit.get()) - floor(Stack.fullest(design), f);
        if (left <= 0) {
            return 0;
        }
        return driven <= 0 ? Double.POSITIVE_INFINITY : Math.sqrt(Sidebands.frequencyDensity(left, outputHz, f) / driven);
    }
}
