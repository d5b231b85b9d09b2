package quietband.identification.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.search.FitEstimate;
import quietband.identification.search.MeasuredPoints;
import quietband.identification.search.ResidualScatter;
import quietband.identification.search.ResponseEvaluator;
import quietband.identification.search.StartSearch;
import quietband.model.Axis;
import quietband.units.StandardGravity;

/**
 * What a curve that no numbers of the model describe would be if it were only written wrongly: a reversed sensor, another unit, another
 * axis. Each idea is tried on the curve alone and told when what is left falls to a third or less. Nothing is changed by it.
 */
public final class MiswrittenData {

    private static final double BAD = 0.15;
    private static final double STATED = 5;
    private static final double MUCH_BETTER = 1 / 3.0;
    private static final double BEYOND_DOUBT = 0.08;
    private static final int POINTS = 40;
    private static final double JUMP = Math.toRadians(100);

    private MiswrittenData() { }

    /** A way in which a file may be wrong, and the curve with it put right. */
    private record Idea(String words, MeasuredPoints righted) { }

    /** Sentences about the curves that an estimate does not describe. */
    public static List<String> of(ResponseEvaluator evaluator, FitEstimate estimate) {
        List<String> told = new ArrayList<>();
        for (int s = 0; s < evaluator.seen().series().size(); s++) {
            MeasuredPoints curve = evaluator.seen().only(s).thinned(POINTS);
            double left = left(evaluator.on(curve), estimate.u());
            double[] stated = Arrays.stream(curve.stated()).filter(Double::isFinite).sorted().toArray();
            boolean bad = left > BAD && (stated.length == 0 || left > STATED * stated[stated.length / 2]);
            double own = bad ? Math.min(left, refitted(evaluator, curve, estimate)) : 0;
            if (own <= BAD) {
                continue;
            }
            Idea best = null;
            double least = own * MUCH_BETTER;
            for (Idea idea : ideas(curve)) {
                double now = refitted(evaluator, idea.righted(), estimate);
                if (now < least) {
                    least = now;
                    best = idea;
                }
                if (least < own * BEYOND_DOUBT) {
                    break;
                }
            }
            if (best != null) {
                told.add(String.format(Locale.ROOT, "%s: cannot be described as it is (off by %.0f %% on average), but well (%.2g %%) "
                    + "if %s; look, correct the file and fit again", curve.series().get(0).label(), 100 * own, 100 * least, best.words()));
            }
        }
        return told;
    }

    /** The mean difference over the larger of measured and predicted, so that 2 is the most. */
    private static double left(ResponseEvaluator on, double[] u) {
        MeasuredPoints curve = on.seen();
        double[] re = new double[curve.size()];
        double[] im = new double[curve.size()];
        if (!on.predict(u, re, im)) {
            return 2;
        }
        return IntStream.range(0, re.length).mapToDouble(i -> Math.sqrt(ResidualScatter.square(curve, i, re[i], im[i]))
            / Math.max(curve.magnitude()[i], Math.hypot(re[i], im[i]))).average().orElse(0);
    }

    private static double refitted(ResponseEvaluator evaluator, MeasuredPoints curve, FitEstimate estimate) {
        ResponseEvaluator on = evaluator.on(curve);
        return Math.min(left(on, estimate.u()), left(on, new StartSearch(on, estimate.held()).best(1)));
    }

    private static List<Idea> ideas(MeasuredPoints c) {
        List<Idea> ideas = new ArrayList<>();
        boolean perG = c.series().get(0).source().response().kind().perG();
        if (c.series().get(0).phased()) {
            turned(c, ideas);
        }
        scaled(ideas, c, 1000, perG ? "the unit were a thousand times larger" : "mg had been written for g in the response");
        scaled(ideas, c, 1e-3, perG ? "the unit were a thousand times smaller" : "mg had been written for g in the drive");
        scaled(ideas, c, StandardGravity.M_PER_S2, perG ? "it were per m/s^2" : "the response were in m/s^2 and the drive in g");
        scaled(ideas, c, 1 / StandardGravity.M_PER_S2, perG ? "it were per 9.81 g" : "the drive were in m/s^2 and the response in g");
        scaled(ideas, c, Math.sqrt(2), "peak and rms had been mixed (a factor 1.414)");
        scaled(ideas, c, Math.sqrt(0.5), "rms and peak had been mixed (a factor 0.707)");
        if (!perG) {
            ideas.add(new Idea("ratios had been written in a column of dB",
                c.with(Arrays.stream(c.magnitude()).map(m -> Math.max(1e-9, 20 * Math.log10(m))).toArray(), c.phase())));
            ideas.add(new Idea("dB had been written in a column of ratios",
                c.with(Arrays.stream(c.magnitude()).map(m -> Math.pow(10, m / 20)).toArray(), c.phase())));
        }
        ideas.add(new Idea("the frequencies were in kHz", c.at(1000)));
        ideas.add(new Idea("the frequencies were in rad/s", c.at(1 / (2 * Math.PI))));
        for (Axis axis : Axis.ALL) {
            if (axis != c.series().get(0).axis() && c.series().get(0).source().response().kind() != Kind.WEIGHTED_PATH) {
                ideas.add(new Idea("it were axis " + axis.letter(), c.along(axis)));
            }
        }
        return ideas;
    }

    private static void turned(MeasuredPoints c, List<Idea> ideas) {
        double[] p = c.phase();
        ideas.add(new Idea("the sign were reversed (180 deg throughout): a sensor or cable the wrong way round, with which a cancellation "
            + "adds where it should take away", c.with(c.magnitude(), Arrays.stream(p).map(v -> v + Math.PI).toArray())));
        ideas.add(new Idea("the phase had the other sign (a lag written as a lead)",
            c.with(c.magnitude(), Arrays.stream(p).map(v -> -v).toArray())));
        ideas.add(new Idea("the phase were in rad", c.with(c.magnitude(), Arrays.stream(p).map(Math::toDegrees).toArray())));
        int at = 0;
        double most = JUMP;
        for (int i = 1; i < p.length; i++) {
            double step = Math.abs(Math.IEEEremainder(p[i] - p[i - 1], 2 * Math.PI));
            if (step > most) {
                most = step;
                at = i;
            }
        }
        if (at > 0) {
            int from = at;
            ideas.add(new Idea(String.format(Locale.ROOT, "the phase did not jump by 180 deg between %.6g and %.6g Hz",
                c.frequency()[at - 1], c.frequency()[at]), c.with(c.magnitude(),
                IntStream.range(0, p.length).mapToDouble(i -> i < from ? p[i] : p[i] + Math.PI).toArray())));
        }
    }

    private static void scaled(List<Idea> ideas, MeasuredPoints c, double tooLarge, String words) {
        ideas.add(new Idea(words, c.with(Arrays.stream(c.magnitude()).map(m -> m / tooLarge).toArray(), c.phase())));
    }
}
