package quietband.tuning.springs;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.numerics.BoundedSearch;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.DesignMargins;

/**
 * The search over twelve values against a longer random search, and on targets made from known designs. {@code main} does it in full;
 * the tests do less of it.
 */
final class HoldSearchWork {

    private HoldSearchWork() { }

    /** A platform without a correction, with all kinds of limits. */
    static ModelFile plain() {
        return ModelFile.parse(Path.of("plain.yaml"), """
            quietband: 1
            oscillator:
              carrier: 10 MHz
              resonator: {sensitivity: {x: 0.35 ppb/g, y: -0.22 ppb/g, z: 0.48 ppb/g}, position: {x: 2 mm, z: 3 mm}}
            platform:
              mass: 210 g
              size: {x: 62 mm, y: 50 mm, z: 24 mm}
              centre_of_gravity: {x: 1 mm, y: -0.5 mm, z: 0.7 mm}
              springs:
                - name: four
                  at: [{x: 24 mm, y: 20 mm}, {x: -24 mm, y: 20 mm}, {x: -24 mm, y: -20 mm}, {x: 24 mm, y: -20 mm}]
                  stiffness: {x: 16 N/mm, y: 16 N/mm, z: 17 N/mm}
                  damping: 3 N*s/m
              clearance: 2 mm
              limits: {mass: 260 g}
            vibration:
              random: {points: [{frequency: 20 Hz, density: 0.01 g^2/Hz}, {frequency: 1 kHz, density: 0.01 g^2/Hz}]}
              sustained: 2 g
            requirement:
              residual: [{frequency: 10 Hz, limit: 1 ppb/g}, {frequency: 100 Hz, limit: 1 ppb/g}, {frequency: 2 kHz, limit: 0.01 ppb/g}]
            """);
    }

    /** Shares within the box, the same for the same seed. */
    static double[] shares(Random random) {
        double[] x = new double[HoldSearch.FREE];
        for (int i = 0; i < x.length; i++) {
            x[i] = random.nextDouble();
        }
        return x;
    }

    /** The model with limits that a design nobody told the search of just meets: residual, travel and mass are its own. */
    static ModelFile target(ModelFile file, long seed) {
        HoldSearch search = new HoldSearch(file.design(), true);
        Random random = new Random(seed);
        double[] known = shares(random);
        for (int i = 0; i < 40; i++) {
            double[] x = shares(random);
            known = search.score(x).cost() < search.score(known).cost() ? x : known;
        }
        Design d = search.design(known);
        double share = Math.pow(10, -DesignMargins.of(d).marginDb() / 20);
        Vec used = Assessor.assess(d).travel().orElseThrow().counted();
        String limit = String.format(Locale.ROOT, "[{frequency: 10 Hz, limit: %.12g ppb/g}, {frequency: 100 Hz, limit: %.12g ppb/g}, "
            + "{frequency: 2 kHz, limit: %.12g ppb/g}]", share, share, 0.01 * share);
        return file.withValue("requirement.residual", limit).withValue("platform.clearance", String.format(Locale.ROOT,
            "{x: %.12g mm, y: %.12g mm, z: %.12g mm}", 1e3 * used.x(), 1e3 * used.y(), 1e3 * used.z()))
            .withValue("platform.limits.mass", String.format(Locale.ROOT, "%.12g kg", d.platform().orElseThrow().mass() + 1e-9));
    }

    static BoundedSearch.Result searched(ModelFile file, long seed) {
        HoldSearch search = new HoldSearch(file.design(), true);
        return BoundedSearch.run(search.start(), seed, 2, search::score);
    }

    /** The best score of many random points. */
    static BoundedSearch.Score random(ModelFile file, long looks, long seed) {
        HoldSearch search = new HoldSearch(file.design(), true);
        Random random = new Random(seed);
        BoundedSearch.Score best = null;
        for (long i = 0; i < looks; i++) {
            BoundedSearch.Score s = search.score(shares(random));
            best = best == null || s.cost() < best.cost() ? s : best;
        }
        return best;
    }

    /** Ten targets, then a random search of a hundred times the length. */
    public static void main(String[] args) {
        for (long seed = 1; seed <= 10; seed++) {
            ModelFile target = target(plain(), seed);
            long before = System.nanoTime();
            BoundedSearch.Result r = searched(target, seed);
            DesignMargins margins = DesignMargins.of(new HoldSearch(target.design(), true).design(r.best().x()));
            System.out.printf(Locale.ROOT, "target %d: margin %.3f dB, over %.4f dB, %d designs, %.1f s%n", seed, margins.marginDb(),
                margins.worstOver(), r.looks(), (System.nanoTime() - before) / 1e9);
        }
        ModelFile file = args.length > 0 ? ModelFile.read(Path.of(args[0])) : plain();
        BoundedSearch.Result r = searched(file, 1);
        BoundedSearch.Score s = random(file, 100 * r.looks(), 1);
        System.out.printf(Locale.ROOT, "search of %d: goal %.4f dB, over %.4f; random search of %d: goal %.4f dB, over %.4f%n", r.looks(),
            r.best().score().goal(), r.best().score().over(), 100 * r.looks(), s.goal(), s.over());
    }
}
