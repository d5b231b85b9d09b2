package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.cancellation.CancellationPath;
import quietband.demand.Decibels;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.platform.Assembly;
import quietband.response.Effort;
import quietband.response.FrequencyIntegrals;
import quietband.response.GridSeeds;
import quietband.response.ModeProperties;
import quietband.response.ResidualResponse;
import quietband.response.travel.RandomMotion;
import quietband.response.travel.SpringSlack;
import quietband.response.travel.Travel;
import quietband.spectrum.AdaptiveCurves;
import quietband.vibration.Profile;

/** Assesses a design: the order of work, and each requirement judged. */
public final class Assessor {

    private final Design design;
    private final Effort effort;
    private final Assembly assembly;
    private final ResidualResponse response;
    private final List<RequirementResult> requirements = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    private Assessor(Design design, Assembly assembly, Effort effort) {
        this.design = design;
        this.effort = effort;
        this.assembly = assembly;
        this.response = new ResidualResponse(design, assembly);
    }

    /**
     * The whole assessment; the program's own grid decides, no table's points.
     *
     * @throws quietband.platform.SingularPlatformException when the springs leave a direction free
     */
    public static Assessment assess(Design design) {
        return assess(design, Effort.FULL);
    }

    /** The same with less effort. */
    public static Assessment assess(Design design, Effort effort) {
        return assess(design, design.platform().map(Assembly::new).orElse(null), effort);
    }

    /** The same with matrices built before; null when the design has no platform. */
    public static Assessment assess(Design design, Assembly assembly, Effort effort) {
        return new Assessor(design, assembly, effort).run();
    }

    private Assessment run() {
        Requirement r = design.requirement();
        boolean full = effort == Effort.FULL;
        GridSeeds seeds = new GridSeeds(design, assembly, effort);
        Coverage coverage = new Coverage(design, response, effort);
        NoiseLimit noiseLimit = new NoiseLimit(design, response);
        PhaseJitter noise = new PhaseJitter(design, response, effort);
        Optional<Platform> moved = design.platform().filter(p -> full || p.clearance().isPresent());
        FrequencyIntegrals.Part motion = RandomMotion.part(design, moved.isPresent() ? assembly : null, response);
        AdaptiveCurves.Curves curves = f -> {
            double[] over = new double[coverage.count() + noiseLimit.count()];
            coverage.write(f, over);
            noiseLimit.write(f, over, coverage.count());
            return over;
        };
        List<Double> frequency = new ArrayList<>();
        List<double[]> value = new ArrayList<>();
        FrequencyIntegrals.Part band = new FrequencyIntegrals.Part(0, r.fromHz(), r.toHz(), (f, into, offset) -> {
            frequency.add(f);
            value.add(curves.at(f));
        });
        double[][] integrals = full ? FrequencyIntegrals.of(seeds, noise.part(), motion)
            : FrequencyIntegrals.trapezoids(seeds, noise.part(), motion, band);
        AdaptiveCurves sweep = full ? AdaptiveCurves.refined(seeds.between(r.fromHz(), r.toHz()), curves, Coverage.FOLLOW_DB)
            : AdaptiveCurves.sampled(frequency, value, curves);
        warnings.addAll(seeds.passedOver());
        if (sweep.followedToHz() < r.toHz()) {
            warnings.add("the curves turn too often for the band: above " + plain(sweep.followedToHz()) + " Hz they are looked at on the "
                + "program's grid alone, so that narrow peaks and gaps there may be missing");
        }
        List<StackVerdict> verdicts = coverage.verdicts(sweep);
        if (new ResidualDemand(design).asked()) {
            ResidualPoint w = verdicts.get(verdicts.size() - 1).worst();
            requirements.add(RequirementResult.margin("residual", w.marginDb(), w.residualPerG() * 1e9, w.limitPerG() * 1e9,
                "ppb/g", w.frequencyHz(), w.axis()));
        }
        noiseLimit.verdict(sweep, coverage.count()).ifPresent(requirements::add);
        List<ToneSideband> tones = ToneSideband.of(design, response);
        judgeTones(tones);
        List<Assessment.RowJitter> jitter = noise.of(integrals[0]);
        r.jitter().ifPresent(j -> judgeJitter(jitter, j));
        RandomMotion random = new RandomMotion(design.vibration().together(), integrals[1]);
        Optional<Travel> travel = moved.map(p -> Travel.of(design, assembly, random, effort));
        moved.flatMap(Platform::clearance).ifPresent(c -> requirements.add(travel.orElseThrow().use(c)));
        design.cancellation().ifPresent(c -> requirements.addAll(RangeUse.of(design, response, random).results(c)));
        if (full) {
            design.cancellation().ifPresent(this::warnFolding);
        }
        if (full && assembly != null) {
            SpringSlack.of(design, assembly, random).stream().map(SpringSlack::warning).filter(s -> !s.isEmpty())
                .forEach(warnings::add);
        }
        List<ModeProperties> modes = assembly == null || !full ? List.of() : ModeProperties.of(assembly);
        return new Assessment(design, verdicts, requirements, modes, travel, rms(), jitter, tones, warnings);
    }

    private double[] rms() {
        double[] rms = new double[3];
        for (Axis axis : Axis.ALL) {
            rms[axis.ordinal()] = design.vibration().drive(axis).map(Profile::rmsG).orElse(0.0);
        }
        return rms;
    }

    private void judgeTones(List<ToneSideband> tones) {
        Stack stack = Stack.fullest(design);
        ToneSideband worst = null;
        double least = Double.POSITIVE_INFINITY;
        for (ToneSideband t : tones) {
            double margin = Decibels.clamp(t.limitDbc() - t.levelDbc().get(stack));
            if (!Double.isNaN(t.limitDbc()) && (worst == null || margin < least)) {
                least = margin;
                worst = t;
            }
            if (t.exact(stack)) {
                warnings.add(String.format(Locale.ROOT, "tone at %s Hz along %s has a modulation index of %.3g at the output: its "
                    + "level is 20 log10(J1/J0), higher sidebands exist", plain(t.frequencyHz()), t.axis().letter(),
                    t.index().get(stack)));
            }
        }
        if (worst != null) {
            requirements.add(RequirementResult.margin("tones", least, worst.levelDbc().get(stack), worst.limitDbc(), "dBc",
                worst.frequencyHz(), worst.axis().letter()));
        }
    }

    private void judgeJitter(List<Assessment.RowJitter> jitter, Requirement.Jitter limit) {
        Assessment.RowJitter worst = new Assessment.RowJitter("", 0);
        for (Assessment.RowJitter j : jitter) {
            worst = j.rmsRad() >= worst.rmsRad() ? j : worst;
        }
        requirements.add(RequirementResult.margin("jitter", Decibels.margin(worst.rmsRad(), limit.limitRad()),
            worst.rmsRad() * 1e3, limit.limitRad() * 1e3, "mrad", Double.NaN, worst.row()));
    }

    private void warnFolding(Cancellation c) {
        if (!c.path().sampled()) {
            return;
        }
        CancellationPath path = new CancellationPath(c);
        double most = 0;
        for (int i = 0; i < 3; i++) {
            most = Math.max(most, path.foldedGain(i, design.requirement().toHz()));
        }
        if (20 * StrictMath.log10(most) > -40) {
            warnings.add(String.format(Locale.ROOT, "content near %s Hz folds into the band only %.1f dB down (sensor and low pass): "
                + "it is taken as absent; lower the low pass or raise the sample rate",
                plain(c.path().sampleRateHz() - design.requirement().toHz()), -20 * StrictMath.log10(most)));
        }
    }

    private static String plain(double v) {
        return String.format(Locale.ROOT, "%.5g", v);
    }
}
