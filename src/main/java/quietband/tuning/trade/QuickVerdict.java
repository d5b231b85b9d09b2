package quietband.tuning.trade;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import quietband.demand.PhaseNoise;
import quietband.demand.ResidualDemand;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.oscillator.Sidebands;
import quietband.platform.Assembly;
import quietband.platform.BodyExtent;
import quietband.platform.DynamicStiffness;
import quietband.platform.Resonances;
import quietband.platform.SingularPlatformException;
import quietband.response.GridSeeds;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogCurve;

/**
 * How one design stands to every requirement, fast enough for searches: one pass over a coarse grid that
 * knows the resonances, its peaks refined by parabolas. Good to some hundredths of a dB; whatever a search finds is
 * judged again in full.
 *
 * @param marginDb of the residual of the fullest stack at its worst point, dB; NaN without a residual limit
 * @param overDb   how far each requirement is over its limit, dB; below 0 where it is met; what is not asked is missing
 */
public record QuickVerdict(double marginDb, Map<Limit, Double> overDb) {

    /** What can be asked besides the residual. */
    public enum Limit { PHASE_NOISE, JITTER, TONES, TRAVEL, SENSOR_RANGE, TUNING_SWING, MASS, BOX }

    private static final int PER_DECADE = 40;
    private static final double NEAR_DB = 1.5;
    private static final int REFINED = 4;
    private static final double WORTHLESS = 300;
    private static final double WIDE = 0.1;

    public QuickVerdict {
        overDb = Map.copyOf(overDb);
    }

    /** The verdict on a design; an impossible one is over every limit by 300 dB. */
    public static QuickVerdict of(Design design) {
        try {
            Assembly assembly = design.platform().map(Assembly::new).orElse(null);
            return new Work(design, assembly).verdict();
        } catch (SingularPlatformException | ArithmeticException e) {
            return new QuickVerdict(-WORTHLESS, Map.of(Limit.TRAVEL, WORTHLESS));
        }
    }

    /** The largest excess over any limit, dB; at most 0 when all are met. */
    public double worstOver() {
        return overDb.values().stream().mapToDouble(Double::doubleValue).max().orElse(Double.NEGATIVE_INFINITY);
    }

    /**
     * What a search for the best worst margin looks at: the residual's margin, or the least of the others where none
     * is asked.
     */
    public double goal() {
        return Double.isNaN(marginDb) ? -worstOver() : marginDb;
    }

    /** One pass. */
    private static final class Work {

        private final Design design;
        private final Assembly assembly;
        private final Stack stack;
        private final ResidualResponse response;
        private final ResidualDemand demand;
        private final PhaseNoise noise;
        private final List<PhaseNoise.Row> rows;
        private final QuickMotion motion;
        private final double[] re = new double[3];
        private final double[] im = new double[3];
        private final double[] squared = new double[3];
        private final Map<Limit, Double> over = new EnumMap<>(Limit.class);
        private final double[] density = new double[3];
        private double densityAt = Double.NaN;
        private double floorAt = Double.NaN;
        private double floor;

        Work(Design design, Assembly assembly) {
            this.design = design;
            this.assembly = assembly;
            this.stack = Stack.fullest(design);
            this.response = new ResidualResponse(design, assembly);
            this.demand = new ResidualDemand(design);
            this.noise = new PhaseNoise(design);
            this.rows = noise.rows();
            this.motion = new QuickMotion(design, assembly, response);
        }

        QuickVerdict verdict() {
            Requirement r = design.requirement();
            double[] f = grid(r);
            int n = f.length;
            double[] residual = new double[n];
            double[] phase = new double[n];
            double[] jitter = new double[rows.size()];
            boolean noisy = (r.phaseNoise().isPresent() || r.jitter().isPresent()) && !rows.isEmpty();
            double from = r.jitter().map(Requirement.Jitter::fromHz).orElse(r.fromHz());
            double to = r.jitter().map(Requirement.Jitter::toHz).orElse(r.toHz());
            for (int i = 0; i < n; i++) {
                at(f[i]);
                boolean inBand = f[i] >= r.fromHz() && f[i] <= r.toHz();
                residual[i] = inBand && demand.asked() ? residualOver(f[i]) : -WORTHLESS;
                phase[i] = inBand && r.phaseNoise().isPresent() && !rows.isEmpty() ? phaseOver(f[i]) : -WORTHLESS;
                if (noisy) {
                    addJitter(jitter, f, i, from, to);
                }
                motion.add(f, i, densities(f[i]));
            }
            if (r.phaseNoise().isPresent() && !rows.isEmpty()) {
                over.put(Limit.PHASE_NOISE, refined(f, phase, this::phaseOver));
            }
            r.jitter().filter(j -> !rows.isEmpty()).ifPresent(j -> {
                double most = 0;
                for (double v : jitter) {
                    most = Math.max(most, v);
                }
                over.put(Limit.JITTER, 20 * StrictMath.log10(Math.sqrt(2 * most) / j.limitRad()));
            });
            double margin = demand.asked() ? -refined(f, residual, this::residualOver) : Double.NaN;
            motion.limits(over);
            design.platform().ifPresent(this::size);
            return new QuickVerdict(margin, over);
        }

        private double[] grid(Requirement r) {
            TreeSet<Double> ends = new TreeSet<>(List.of(r.fromHz(), r.toHz()));
            r.jitter().ifPresent(j -> ends.addAll(List.of(j.fromHz(), j.toHz())));
            TreeSet<Double> must = new TreeSet<>(ends);
            for (Axis axis : Axis.ALL) {
                design.vibration().drive(axis).map(LogCurve::frequencies).ifPresent(p -> {
                    ends.addAll(List.of(p[0], p[p.length - 1]));
                });
            }
            must.addAll(ends);
            for (double f : new GridSeeds(design, null).between(ends.first(), ends.last(), PER_DECADE)) {
                must.add(f);
            }
            if (assembly != null) {
                modes(must, ends.first(), ends.last());
            }
            return must.stream().mapToDouble(Double::doubleValue).toArray();
        }

        /** Some points in the width of each resonance that is too narrow for the even grid. */
        private void modes(TreeSet<Double> grid, double from, double to) {
            DynamicStiffness stiffness = new DynamicStiffness(assembly);
            for (int m = 0; m < 6; m++) {
                peak(grid, assembly.modes().frequencyHz(m), stiffness.dampingRatio(m), from, to);
            }
            if (assembly.surgeHz() < 1.1 * to) {
                double above = 2 * assembly.modes().frequencyHz(5);
                Resonances.between(assembly, Math.max(above, from), 1.1 * to)
                    .forEach(p -> peak(grid, p.frequencyHz(), p.widthHz() / p.frequencyHz() / 2, from, to));
            }
        }

        private static void peak(TreeSet<Double> grid, double centre, double ratio, double from, double to) {
            for (double away : ratio < WIDE ? new double[] {-2.5, -1.2, -0.5, 0, 0.5, 1.2, 2.5} : new double[] {0}) {
                double f = centre * (1 + Math.max(ratio, 1e-6) * away);
                if (f > from && f < to) {
                    grid.add(f);
                }
            }
        }

        private void at(double f) {
            response.at(f);
            response.residual(stack, re, im);
            for (int j = 0; j < 3; j++) {
                squared[j] = re[j] * re[j] + im[j] * im[j];
            }
        }

        private double residualOver(double f) {
            return demand.overDb(f, squared);
        }

        private double[] densities(double f) {
            if (f != densityAt) {
                densityAt = f;
                for (Axis axis : Axis.ALL) {
                    density[axis.ordinal()] = noise.density(axis, f);
                }
            }
            return density;
        }

        private double vibration(PhaseNoise.Row row, double f) {
            double sum = 0;
            for (Axis axis : row.axes()) {
                sum += squared[axis.ordinal()] * densities(f)[axis.ordinal()];
            }
            return Sidebands.phaseNoise(sum, design.oscillator().outputHz(), f);
        }

        private double floor(double f) {
            if (f != floorAt) {
                floorAt = f;
                floor = noise.floor(stack, f);
            }
            return floor;
        }

        private double phaseOver(double f) {
            double floor = floor(f);
            double most = -WORTHLESS;
            for (PhaseNoise.Row row : rows) {
                most = Math.max(most, 10 * StrictMath.log10(floor + vibration(row, f)));
            }
            return most - noise.limitDbc(f).orElseThrow();
        }

        /** Trapezoids over log f. */
        private void addJitter(double[] sum, double[] f, int i, double from, double to) {
            double weight = QuickMotion.weight(f, i, from, to);
            if (weight > 0) {
                double floor = floor(f[i]);
                for (int k = 0; k < sum.length; k++) {
                    sum[k] += weight * (floor + vibration(rows.get(k), f[i]));
                }
            }
        }

        /**
         * A curve's largest value: parabolas through the nodes around each high local maximum, followed a few
         * steps.
         */
        private double refined(double[] f, double[] v, java.util.function.DoubleUnaryOperator curve) {
            double most = -WORTHLESS;
            for (double value : v) {
                most = Math.max(most, value);
            }
            double best = most;
            for (int i = 1; i < v.length - 1; i++) {
                if (v[i] > most - NEAR_DB && v[i] >= v[i - 1] && v[i] >= v[i + 1] && v[i - 1] > -WORTHLESS && v[i
                    + 1] > -WORTHLESS) {
                    best = Math.max(best, peak(new double[] {f[i - 1], f[i], f[i + 1]}, new double[] {v[i - 1], v[i],
                        v[i + 1]}, curve));
                }
            }
            return best;
        }

        private double peak(double[] f, double[] v, java.util.function.DoubleUnaryOperator curve) {
            double[] x = {StrictMath.log(f[0]), StrictMath.log(f[1]), StrictMath.log(f[2])};
            for (int step = 0; step < REFINED; step++) {
                double left = (x[1] - x[0]) * (v[1] - v[2]);
                double right = (x[1] - x[2]) * (v[1] - v[0]);
                double below = 2 * (left - right);
                double next = below == 0 ? x[1] : x[1] - ((x[1] - x[0]) * left - (x[1] - x[2]) * right) / below;
                if (!(next > x[0] && next < x[2]) || Math.abs(next - x[1]) < 1e-5) {
                    break;
                }
                double at = StrictMath.exp(next);
                at(at);
                double value = curve.applyAsDouble(at);
                boolean up = next > x[1];
                if (value >= v[1]) {
                    x[up ? 0 : 2] = x[1];
                    v[up ? 0 : 2] = v[1];
                    x[1] = next;
                    v[1] = value;
                } else {
                    x[up ? 2 : 0] = next;
                    v[up ? 2 : 0] = value;
                }
            }
            return v[1];
        }

        private void size(Platform p) {
            if (Double.isFinite(p.massLimit())) {
                over.put(Limit.MASS, 20 * StrictMath.log10(p.mass() / p.massLimit()));
            }
            Vec need = BodyExtent.box(p, p.clearance().orElse(Vec.ZERO));
            double most = Double.NEGATIVE_INFINITY;
            for (Axis axis : Axis.ALL) {
                if (Double.isFinite(p.boxLimit().get(axis))) {
                    most = Math.max(most, 20 * StrictMath.log10(need.get(axis) / p.boxLimit().get(axis)));
                }
            }
            if (most > Double.NEGATIVE_INFINITY) {
                over.put(Limit.BOX, most);
            }
        }
    }
}
