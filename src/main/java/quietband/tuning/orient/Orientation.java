package quietband.tuning.orient;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import quietband.model.Design;
import quietband.model.Rotation;
import quietband.model.Vec;

/**
 * The turn of a resonator that serves best.
 *
 * @param goal     what it was judged by
 * @param limited  whether figures of {@link Goal#RESIDUAL} are over the limit, a ratio; else in 1/g
 * @param turn     the smallest that takes the sensitivity as written to where it serves best
 * @param mounted  sensitivity after it, 1/g
 * @param before   figure as the model stands
 * @param after    figure after the turn
 * @param unturned figure without any turn
 * @param errors   what an error of the angle costs
 */
public record Orientation(Goal goal, boolean limited, Rotation turn, Vec mounted, double before, double after, double unturned,
                          List<AngleError> errors) {

    private static final double[] ERRORS_DEG = {0.1, 0.2, 0.5, 1, 2, 5, 10};
    private static final int AROUND = 36;

    /** What a turn is judged by. */
    public enum Goal {
        /** The largest component of the vector, 1/g. */
        AXIS,
        /** The worst of the residual through platform and cancellation, over the limit where there is one. */
        RESIDUAL,
        /** Integrated phase noise in the model's vibration, rad rms. */
        NOISE
    }

    /**
     * The figure when the vector points somewhat elsewhere, the worst way round.
     *
     * @param angle        of the error, rad
     * @param recalibrated with weights that follow the vector as it is
     * @param kept         with weights for the vector as it was meant; the same without a cancellation
     */
    public record AngleError(double angle, double recalibrated, double kept) { }

    public Orientation {
        errors = List.copyOf(errors);
    }

    /** Searches. @throws IllegalArgumentException when the resonator has no sensitivity at all */
    public static Orientation of(Design design, Goal goal) {
        Vec written = design.oscillator().resonator().sensitivityPerG();
        double size = written.length();
        if (!(size > 0)) {
            throw new IllegalArgumentException("a sensitivity of 0 on every axis has no direction to turn");
        }
        OrientationGoal aim = switch (goal) {
            case AXIS -> (g, weights, enough) -> g.map(Math::abs).largest();
            case RESIDUAL -> new ResidualOrientation(design);
            case NOISE -> new NoiseOrientation(design);
        };
        boolean follows = design.cancellation().map(c -> c.weightsPerG().isEmpty()).orElse(true);
        Vec fixed = design.weightsPerG();
        ToDoubleBiFunction<Vec, Double> value = (u, enough) -> {
            Vec g = u.times(size);
            return aim.of(g, follows ? g : fixed, enough);
        };
        Vec start = SphereSearch.unit(written);
        SphereSearch.Found best = SphereSearch.least(value, start);
        Vec mounted = best.direction().times(size);
        Vec now = design.oscillator().resonator().mountedSensitivityPerG();
        List<AngleError> errors = new ArrayList<>();
        for (double deg : ERRORS_DEG) {
            errors.add(error(aim, best.direction(), size, Math.toRadians(deg), follows ? mounted : fixed, follows));
        }
        return new Orientation(goal, aim instanceof ResidualOrientation seen && seen.limited(), between(start, best.direction()), mounted,
            aim.of(now, follows ? now : fixed), best.value(), aim.of(written, follows ? written : fixed), errors);
    }

    private static AngleError error(OrientationGoal aim, Vec u, double size, double angle, Vec weights, boolean follows) {
        Vec e1 = SphereSearch.across(u);
        Vec e2 = SphereSearch.cross(u, e1);
        double recalibrated = 0;
        double kept = 0;
        for (int k = 0; k < AROUND; k++) {
            double p = 2 * Math.PI * k / AROUND;
            Vec side = e1.times(StrictMath.cos(p)).plus(e2.times(StrictMath.sin(p)));
            Vec g = u.times(StrictMath.cos(angle)).plus(side.times(StrictMath.sin(angle))).times(size);
            recalibrated = Math.max(recalibrated, aim.of(g, follows ? g : weights));
            kept = Math.max(kept, aim.of(g, weights));
        }
        return new AngleError(angle, recalibrated, kept);
    }

    /** The smallest turn that takes one direction to another. */
    static Rotation between(Vec from, Vec to) {
        Vec axis = SphereSearch.cross(from, to);
        double s = axis.length();
        double c = SphereSearch.dot(from, to);
        if (s < 1e-12) {
            return c > 0 ? Rotation.NONE : new Rotation(SphereSearch.across(from), Math.PI);
        }
        return new Rotation(axis.times(1 / s), StrictMath.atan2(s, c));
    }
}
