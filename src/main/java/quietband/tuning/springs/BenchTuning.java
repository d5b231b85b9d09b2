package quietband.tuning.springs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.platform.BodyExtent;
import quietband.platform.Modes;
import quietband.tuning.parts.PlatformNumbers;

/**
 * A unit on the bench: its natural frequencies were measured, and it shall be brought to the wanted ones by ballast, and by other
 * rates (a shim, or
 * another spring) where ballast cannot.
 *
 * @param unit       the model with rates that give the measured natural frequencies
 * @param tuned      the unit with ballast and rates changed
 * @param measuredHz natural frequencies as measured
 * @param wantedHz   natural frequencies wanted
 * @param ballastHz  natural frequencies with the ballast alone
 * @param tunedHz    natural frequencies with everything
 * @param ballast    kg at the centre of gravity, in steps of 0.1 g
 * @param at         its place, m
 * @param rate       factor on the rates along each axis after that; 1 where none is needed
 * @param shifts     what small changes do to each mode
 */
public record BenchTuning(ModelFile unit, ModelFile tuned, Vec measuredHz, Vec wantedHz, Vec ballastHz, Vec tunedHz, double ballast, Vec at,
                          Vec rate, List<Shift> shifts) {

    /** Mass of the trial weight, kg. */
    public static final double TRIAL = 0.5e-3;

    private static final double TRIAL_RATE = 0.01;
    private static final double CLOSE = 0.002;

    public BenchTuning {
        shifts = List.copyOf(shifts);
    }

    /**
     * What one small change does to one mode.
     *
     * @param change in words: the trial weight at a place, or 1 % on the rates of a spring
     * @param at     place, m
     * @param mode   from 1, rising frequency
     * @param shape  in words
     * @param fromHz before
     * @param toHz   after
     */
    public record Shift(String change, Vec at, int mode, String shape, double fromHz, double toHz) { }

    /**
     * Works it out.
     *
     * @param measured natural frequencies of the unit, Hz
     * @param wanted   Hz; NaN on an axis where the model's own natural frequency is wanted
     */
    public static BenchTuning of(ModelFile file, Vec measured, Vec wanted) {
        Design base = file.design();
        Platform p = base.platform().orElseThrow(() -> new ImpossibleRequestException(
            "the model has no platform: there are no natural frequencies to tune"));
        Vec own = AxisFrequencies.hz(new Assembly(p));
        Vec aim = wanted.orElse(own);
        NaturalFrequencySolver as = NaturalFrequencySolver.solve(base, measured);
        if (as.off() > 0.01) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT,
                "no rates of these springs give %.4g, %.4g and %.4g Hz along x, y "
                + "and z (nearest: %.4g, "
                + "%.4g, %.4g Hz): check which reading belongs to which axis, and the model's places and inertia", measured.x(),
                measured.y(),
                measured.z(), as.cornerHz().x(), as.cornerHz().y(), as.cornerHz().z()));
        }
        Design unit = as.design();
        double ballast = Ballast.nearest(unit, aim);
        Vec at = unit.platform().orElseThrow().centreOfGravity();
        PlatformNumbers weighed = new PlatformNumbers(unit);
        weighed.ballast(ballast, at);
        Design with = weighed.design();
        Vec now = AxisFrequencies.hz(new Assembly(with.platform().orElseThrow()));
        boolean enough = Axis.ALL.stream().allMatch(a -> Math.abs(now.get(a) / aim.get(a) - 1) <= CLOSE);
        NaturalFrequencySolver rates = enough ? new NaturalFrequencySolver(with, Vec.all(1), now, 0)
            : NaturalFrequencySolver.solve(with, aim);
        return new BenchTuning(file.withQuantities(unit.quantities()), file.withQuantities(rates.design().quantities()), measured, aim, now,
            AxisFrequencies.hz(new Assembly(rates.design().platform().orElseThrow())), ballast, at, rates.factors(), shifts(unit));
    }

    /** Every mode for the trial weight at each corner of the body (without a size: at each spring), and for each spring's rates. */
    static List<Shift> shifts(Design unit) {
        Platform p = unit.platform().orElseThrow();
        List<Shift> list = new ArrayList<>();
        int number = 1;
        for (Vec at : places(p)) {
            PlatformNumbers numbers = new PlatformNumbers(unit);
            numbers.ballast(TRIAL, at);
            add(list, String.format(Locale.ROOT, "+0.5 g at corner %d", number++), at, unit, numbers.design());
        }
        for (Spring s : p.springs()) {
            PlatformNumbers numbers = new PlatformNumbers(unit);
            numbers.scaleOne(s, 1 + TRIAL_RATE);
            add(list, "+1 % on the rates of " + s.label(), s.at(), unit, numbers.design());
        }
        return list;
    }

    private static List<Vec> places(Platform p) {
        return p.size().isPresent() ? BodyExtent.corners(p) : p.springs().stream().map(Spring::at).toList();
    }

    private static void add(List<Shift> list, String change, Vec at, Design before, Design after) {
        Modes from = new Assembly(before.platform().orElseThrow()).modes();
        Modes to = new Assembly(after.platform().orElseThrow()).modes();
        for (int n = 0; n < 6; n++) {
            list.add(new Shift(change, at, n + 1, from.inWords(n), from.frequencyHz(n), to.frequencyHz(n)));
        }
    }
}
