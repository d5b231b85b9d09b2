package quietband.tuning.orient;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import quietband.model.Vec;

/**
 * The least value of a function of direction: a grid of one degree over the sphere, then ever finer patches around the best places
 * that stand apart. Needs no derivative, so that a worst case of many curves with its kinks will do.
 */
final class SphereSearch {

    private static final double DEGREE = Math.PI / 180;
    private static final int PLACES = 12;
    private static final int ROUNDS = 24;
    private static final int REACH = 3;
    private static final double NEAR = StrictMath.cos(4 * DEGREE);
    private static final double EQUAL = 1 + 1e-7;

    private SphereSearch() { }

    /** A direction (unit vector) and its value. */
    record Found(Vec direction, double value) { }

    /**
     * Searches.
     *
     * @param value of a direction; the second argument is a value beyond which any larger one will do
     * @param near  of equally good directions the one nearest to this one is taken
     */
    static Found least(ToDoubleBiFunction<Vec, Double> value, Vec near) {
        List<Found> best = new ArrayList<>();
        double enough = Double.POSITIVE_INFINITY;
        for (Vec u : grid()) {
            double v = value.applyAsDouble(u, enough);
            if (v <= enough) {
                keep(best, new Found(u, v));
                enough = best.size() < PLACES ? Double.POSITIVE_INFINITY : best.get(best.size() - 1).value();
            }
        }
        List<Found> refined = best.stream().map(b -> refined(value, b)).toList();
        double least = refined.stream().mapToDouble(Found::value).min().orElseThrow();
        return refined.stream().filter(f -> f.value() <= least * EQUAL)
            .max(Comparator.comparingDouble(f -> dot(f.direction(), near))).orElseThrow();
    }

    /** Directions about one degree apart, poles included. */
    static List<Vec> grid() {
        List<Vec> all = new ArrayList<>();
        for (int t = 0; t <= 180; t++) {
            double s = StrictMath.sin(t * DEGREE);
            int around = Math.max(1, (int) Math.round(360 * s));
            for (int k = 0; k < around; k++) {
                double p = 2 * Math.PI * k / around;
                all.add(new Vec(s * StrictMath.cos(p), s * StrictMath.sin(p), StrictMath.cos(t * DEGREE)));
            }
        }
        return all;
    }

    /** Keeps the best places, one of neighbours. */
    private static void keep(List<Found> best, Found f) {
        for (int k = 0; k < best.size(); k++) {
            if (dot(best.get(k).direction(), f.direction()) > NEAR) {
                if (best.get(k).value() <= f.value()) {
                    return;
                }
                best.remove(k);
                k--;
            }
        }
        best.add(f);
        best.sort(Comparator.comparingDouble(Found::value));
        if (best.size() > PLACES) {
            best.remove(best.size() - 1);
        }
    }

    private static Found refined(ToDoubleBiFunction<Vec, Double> value, Found start) {
        Found best = start;
        double step = DEGREE / REACH;
        for (int round = 0; round < ROUNDS; round++) {
            Vec centre = best.direction();
            Vec e1 = across(centre);
            Vec e2 = cross(centre, e1);
            for (int a = -REACH; a <= REACH; a++) {
                for (int b = -REACH; b <= REACH; b++) {
                    Vec u = unit(centre.plus(e1.times(a * step)).plus(e2.times(b * step)));
                    double v = value.applyAsDouble(u, best.value());
                    best = v < best.value() ? new Found(u, v) : best;
                }
            }
            boolean stayed = best.direction().equals(centre) || dot(best.direction(), centre) > 1 - 2 * step * step;
            step = stayed ? step / 2.5 : step;
        }
        return best;
    }

    static double dot(Vec a, Vec b) {
        return a.x() * b.x() + a.y() * b.y() + a.z() * b.z();
    }

    static Vec cross(Vec a, Vec b) {
        return new Vec(a.y() * b.z() - a.z() * b.y(), a.z() * b.x() - a.x() * b.z(), a.x() * b.y() - a.y() * b.x());
    }

    static Vec unit(Vec a) {
        return a.times(1 / a.length());
    }

    /** A unit vector across another. */
    static Vec across(Vec a) {
        Vec other = Math.abs(a.x()) <= Math.abs(a.y()) && Math.abs(a.x()) <= Math.abs(a.z()) ? new Vec(1, 0, 0)
            : Math.abs(a.y()) <= Math.abs(a.z()) ? new Vec(0, 1, 0) : new Vec(0, 0, 1);
        return unit(cross(a, other));
    }
}
