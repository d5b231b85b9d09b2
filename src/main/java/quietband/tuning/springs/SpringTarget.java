package quietband.tuning.springs;

import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.tuning.parts.PlatformNumbers;
import quietband.tuning.parts.SpringRequest;

/**
 * The natural frequencies that a target comes down to.
 *
 * @param design   to start from: places and ballast as they are to be
 * @param cornerHz wanted, Hz
 * @param damping  ratios wanted; empty keeps what is there
 * @param ballast  added already, kg
 * @param at       its place, m
 * @param search   how it was found, in words; empty where it was stated
 */
record SpringTarget(Design design, Vec cornerHz, Optional<Vec> damping, double ballast, Vec at, String search) {

    private static final String LOWERED = " With the rates and the damping of these parts it takes a natural frequency of ";
    private static final double RESERVE_DB = 0.15;
    private static final double LOWEST_HZ = 0.2;

    /** Works it out for a design whose springs may have been moved. */
    static SpringTarget of(Design design, SpringRequest wish, int threads, LongConsumer told) {
        if (wish.hold()) {
            return new HoldSearch(design, wish.centre()).run(wish.seed(), threads, told);
        }
        Optional<Vec> damping = wish.damping().map(Vec::all);
        if (wish.reduction().isPresent()) {
            double corner = reducing(design, wish.reduction().get(), damping);
            return new SpringTarget(design, Vec.all(corner), damping, 0, Vec.ZERO, String.format(Locale.ROOT, "A natural frequency of %.4g "
                + "Hz on every axis "
                + "takes %.4g dB away from %.4g Hz on.", corner, wish.reduction().get().decibels(), wish.reduction().get().frequencyHz()));
        }
        Vec now = AxisFrequencies.hz(new Assembly(design.platform().orElseThrow()));
        Vec wanted = wish.corner().map(v -> v.orElse(now)).orElse(now);
        return new SpringTarget(design, wanted, damping, 0, Vec.ZERO, "");
    }

    /** Rates and damping for natural frequencies. */
    NaturalFrequencySolver solved() {
        NaturalFrequencySolver solved = NaturalFrequencySolver.solve(design, cornerHz);
        PlatformNumbers numbers = new PlatformNumbers(solved.design());
        SpringDamping.set(numbers, solved, damping);
        // stiffer at the same height is so much more of the same material: its standing wave stays where it is
        Vec s = solved.factors();
        numbers.scale("mass", "", -1, StrictMath.cbrt(s.x() * s.y() * s.z()));
        return new NaturalFrequencySolver(numbers.design(), s, solved.cornerHz(), solved.off());
    }

    /** The same with natural frequencies lower by a factor. */
    SpringTarget lower(double factor) {
        Vec lowered = cornerHz.times(factor);
        String first = search.split(LOWERED, 2)[0];
        return new SpringTarget(design, lowered, damping, ballast, at, first + LOWERED
            + String.format(Locale.ROOT, "%.4g Hz.", lowered.z()));
    }

    /** The highest natural frequency, the same on every axis, with which the platform takes enough away. */
    private static double reducing(Design design, SpringRequest.Reduction wanted, Optional<Vec> damping) {
        double from = wanted.frequencyHz();
        double to = Math.max(design.requirement().toHz(), 1.001 * from);
        double low = LOWEST_HZ;
        double high = from;
        double reached = reduction(design, low, damping, from, to);
        if (reached < wanted.decibels()) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT, "a reduction of %.4g dB at %.4g Hz cannot be met: even with a "
                + "natural frequency of %.2g Hz the "
                + "platform takes no more than %.3g dB away up to %.4g Hz; less damping or loss, lighter springs (their standing waves "
                + "carry vibration across), or a smaller reduction", wanted.decibels(), from, low, reached, to));
        }
        for (int i = 0; i < 40; i++) {
            double middle = Math.sqrt(low * high);
            if (reduction(design, middle, damping, from, to) >= wanted.decibels() + RESERVE_DB) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double reduction(Design design, double corner, Optional<Vec> damping, double from, double to) {
        return PlatformReduction.leastDb(new SpringTarget(design, Vec.all(corner), damping, 0, Vec.ZERO, "").solved().design(), from, to);
    }
}
