package quietband.study.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vibration;
import quietband.motion.drive.MotionRecord;
import quietband.motion.run.LossError;
import quietband.motion.run.PassMonitor;
import quietband.motion.run.VibrationRun;
import quietband.spectrum.Welch;
import quietband.tuning.orient.BlankShock;

/**
 * Random vibration, shock or recorded motion, one pass per axis or one for all, with the prediction of the frequency domain beside it.
 *
 * @param drive  random, shock or record
 * @param linear without the nonlinear parts
 * @param loss   what the stand-in for loss factors changes; empty where nothing is predicted
 */
public record VibrationStudy(Design design, String drive, boolean linear, Optional<LossError> loss, List<Pass> passes) {

    public VibrationStudy {
        passes = List.copyOf(passes);
    }

    /**
     * One pass.
     *
     * @param predicted spectra of its driven axes; empty where no window of time was whole
     * @param agreement by stack; empty where there is nothing to compare
     * @param blank     what the resonator's blank sees of a shock; empty for other drives
     */
    public record Pass(VibrationRun.Result ride, Optional<PredictedSpectrum> predicted, List<SpectrumAgreement> agreement,
                       Optional<BlankShock> blank) {
        public Pass {
            agreement = List.copyOf(agreement);
        }
    }

    /** How a pass is run. */
    public static VibrationRun.Options options(boolean linear, double duration, boolean fullRate, double gridHz) {
        return new VibrationRun.Options(linear, duration, fullRate, DwellStudy.ROWS, gridHz);
    }

    /**
     * Runs random vibration.
     *
     * @param axes     that have a profile
     * @param together whether they are driven in one pass
     * @param factor   on the profiles' densities
     * @param monitors of each pass, by its name
     */
    public static VibrationStudy random(Design design, List<Axis> axes, boolean together, double factor, long seed,
                                        VibrationRun.Options options, Function<String, PassMonitor> monitors) {
        List<VibrationRun.Result> rides = new ArrayList<>();
        for (List<Axis> group : together ? List.of(axes) : axes.stream().map(List::of).toList()) {
            rides.add(VibrationRun.random(design, group, factor, seed, options,
                monitors.apply("random " + (together ? "all" : group.get(0).letter()))));
        }
        Optional<LossError> loss = Optional.of(LossError.of(design, axes, VibrationRun.topHz(design, axes)));
        return new VibrationStudy(design, "random", options.linear(), loss,
            rides.stream().map(r -> pass(design, r, factor, loss, Optional.empty())).toList());
    }

    /** Runs a shock along each axis. */
    public static VibrationStudy shock(Design design, List<Axis> axes, Vibration.Shock shock, VibrationRun.Options options,
                                       Function<String, PassMonitor> monitors) {
        List<Pass> passes = new ArrayList<>();
        for (Axis axis : axes) {
            BlankShock blank = BlankShock.along(design, axis, shock);
            passes.add(pass(design, VibrationRun.shock(design, axis, shock, options, monitors.apply("shock " + axis.letter())), 1,
                Optional.empty(), Optional.of(blank)));
        }
        return new VibrationStudy(design, "shock", options.linear(), Optional.empty(), passes);
    }

    /** Runs recorded motion. */
    public static VibrationStudy recorded(Design design, MotionRecord recording, VibrationRun.Options options, PassMonitor monitor) {
        return new VibrationStudy(design, "record", options.linear(), Optional.empty(), List.of(pass(design,
            VibrationRun.recorded(design, recording, options, monitor), 1, Optional.empty(), Optional.empty())));
    }

    private static Pass pass(Design design, VibrationRun.Result ride, double factor, Optional<LossError> loss,
                             Optional<BlankShock> blank) {
        Optional<PredictedSpectrum> predicted = ride.spectra().filter(w -> w.segments() > 0)
            .map(w -> PredictedSpectrum.of(design, ride, axes(ride), factor, loss));
        boolean compared = loss.isPresent() && ride.spectra().map(w -> w.segments() > 1).orElse(false);
        return new Pass(ride, predicted, compared ? SpectrumAgreement.of(design, ride, predicted.orElseThrow()) : List.of(), blank);
    }

    private static List<Axis> axes(VibrationRun.Result r) {
        if (!r.axis().equals("all")) {
            return List.of(Axis.of(r.axis()));
        }
        return Axis.ALL.stream().filter(a -> r.spectra().map(w -> power(w, a)).orElse(0.0) > 0).toList();
    }

    private static double power(Welch w, Axis a) {
        double sum = 0;
        for (int k = 1; k < w.bins(); k++) {
            sum += w.density(a.ordinal(), k);
        }
        return sum;
    }
}
