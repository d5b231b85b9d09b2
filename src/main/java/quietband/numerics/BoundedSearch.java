package quietband.numerics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Looks for the best point of a unit box under limits: scouts spread over the box, then an evolution strategy with an
 * adapted covariance from the best scout and from the start, then steps along the axes that shorten until nothing
 * gets better. The same seed gives the same answer, whatever the number of threads.
 */
public final class BoundedSearch {

    /**
     * How good a point is.
     *
     * @param goal larger is better
     * @param over largest excess over a limit; at most 0 when all hold
     */
    public record Score(double goal, double over) {

        private static final double PRICE = 20;
        private static final double RESERVE = 1e-3;

        /** One number to be made small: a broken limit costs more than it can bring. */
        public double cost() {
            double broken = Math.max(0, over + RESERVE);
            double cost = -goal + PRICE * broken;
            return Double.isNaN(cost) ? Double.MAX_VALUE : cost;
        }
    }

    /** A point that was looked at. */
    public record Found(double[] x, Score score) { }

    private static final int LEAST_SCOUTS = 24;
    private static final int SCOUTS_EACH = 10;
    private static final double SHORTEST = 4e-4;
    // what is still won by then comes cheaper by the last steps along the axes
    private static final double GAIN = 0.02;

    private final int n;
    private final long seed;
    private final Function<double[], Score> judge;
    private final ForkJoinPool pool;
    private Found best;
    private long looks;

    private BoundedSearch(int n, long seed, Function<double[], Score> judge, ForkJoinPool pool) {
        this.n = n;
        this.seed = seed;
        this.judge = judge;
        this.pool = pool;
    }

    /**
     * What a search came to.
     *
     * @param best  point and score
     * @param looks how many points were judged
     */
    public record Result(Found best, long looks) { }

    /**
     * Searches.
     *
     * @param start in the unit box
     * @param judge called from several threads
     */
    public static Result run(double[] start, long seed, int threads, Function<double[], Score> judge) {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            BoundedSearch search = new BoundedSearch(start.length, seed, judge, pool);
            search.search(start);
            return new Result(search.best, search.looks);
        } finally {
            pool.shutdown();
        }
    }

    /**
     * Steps along the axes from the best of some points only, for a judge that takes long.
     *
     * @param starts in the unit box
     * @param judge  called from several threads
     */
    public static Result refine(List<double[]> starts, int threads, Function<double[], Score> judge) {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            BoundedSearch search = new BoundedSearch(starts.get(0).length, 0, judge, pool);
            search.judged(starts);
            search.descend(0.16, 0.01);
            return new Result(search.best, search.looks);
        } finally {
            pool.shutdown();
        }
    }

    /**
     * A judge that tells after each point how many have been judged.
     *
     * @param looks how many so far, by this judge and others
     * @param told  called from several threads
     */
    public static Function<double[], Score> telling(Function<double[], Score> judge, AtomicLong looks, LongConsumer told) {
        return x -> {
            Score score = judge.apply(x);
            told.accept(looks.incrementAndGet());
            return score;
        };
    }

    private void search(double[] start) {
        UniformRandomProvider random = RandomSource.PHILOX_4X64.create(new long[] {seed, 0, 0, 0, 0, 0});
        List<double[]> scouts = new ArrayList<>(List.of(start.clone()));
        int count = LEAST_SCOUTS + SCOUTS_EACH * n;
        for (int s = 1; s < count; s++) {
            double[] x = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = random.nextDouble();
            }
            scouts.add(x);
        }
        best = judged(scouts).get(0);
        judged(scouts.subList(0, 1));
        Found scout = best;
        evolve(scout.x(), 0.2, 1);
        Found first = best;
        evolve(start, 0.25, 2);
        if (first.score().cost() > best.score().cost() + 0.02) {
            // the two disagree: once more from the better one
            evolve(best.x(), 0.1, 3);
        }
        descend(0.02, SHORTEST);
    }

    private void evolve(double[] from, double step, int run) {
        EvolutionStrategy evolution = new EvolutionStrategy(from, step, seed, run);
        int most = 40 + 9 * n;
        int patience = 9 + n / 2;
        double mark = Double.POSITIVE_INFINITY;
        int since = 0;
        for (int g = 0; g < most && !evolution.settled() && since < patience; g++) {
            List<double[]> points = evolution.ask();
            List<double[]> inside = points.stream().map(BoundedSearch::clamped).toList();
            List<Found> found = judged(inside);
            double[] cost = new double[points.size()];
            for (int i = 0; i < cost.length; i++) {
                double away = 0;
                for (int k = 0; k < n; k++) {
                    away += Math.pow(points.get(i)[k] - inside.get(i)[k], 2);
                }
                cost[i] = found.get(i).score().cost() + 50 * away;
            }
            evolution.tell(points, cost);
            double least = Arrays.stream(cost).min().orElseThrow();
            if (least < mark - GAIN) {
                mark = least;
                since = 0;
            } else {
                since++;
            }
        }
    }

    private static double[] clamped(double[] x) {
        double[] in = x.clone();
        for (int i = 0; i < in.length; i++) {
            in[i] = Math.max(0, Math.min(1, in[i]));
        }
        return in;
    }

    /** Steps along each axis, both ways at once, halved when none helps. */
    @SuppressWarnings("ReferenceEquality") // whether a new one was found
    private void descend(double longest, double shortest) {
        double step = longest;
        while (step > shortest) {
            List<double[]> around = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    double[] x = best.x().clone();
                    x[i] = Math.max(0, Math.min(1, x[i] + sign * step));
                    around.add(x);
                }
            }
            Found before = best;
            judged(around);
            step = best == before ? step / 2 : step;
        }
    }

    /** Judges points together; the best one so far is remembered. */
    private List<Found> judged(List<double[]> points) {
        looks += points.size();
        List<Found> found;
        try {
            found = pool.submit(() -> points.parallelStream().map(x -> new Found(x, judge.apply(x))).toList()).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ImpossibleRequestException("the search was interrupted");
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException r ? r : new IllegalStateException(e.getCause());
        }
        for (Found f : found) {
            if (best == null || f.score().cost() < best.score().cost()) {
                best = f;
            }
        }
        return found;
    }
}
