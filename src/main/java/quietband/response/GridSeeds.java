package quietband.response;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.cancellation.CancellationPath;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.Requirement;
import quietband.model.Resonance;
import quietband.platform.Assembly;
import quietband.platform.DynamicStiffness;
import quietband.platform.Resonances;
import quietband.spectrum.LogCurve;
import quietband.spectrum.SeededGrid;

/** The program's own grid for a design: every resonance, every kink of a limit or profile, every winding phase. */
public final class GridSeeds {

    // in half half-power widths: what a coarse look takes of a mode, if its damping ratio is below a tenth
    private static final double[] AWAY = {-2.5, -1.2, -0.5, 0, 0.5, 1.2, 2.5};
    // of a turn, from grid point to grid point
    private static final double COARSEST_TURN = 0.1;
    private static final double WIDE = 0.1;

    private final Design design;
    private final Assembly assembly;
    private final Effort effort;
    private double countedToHz = Double.POSITIVE_INFINITY;
    private double turnHz;
    private double coarsestHz;

    /** For one design; the assembly is null when it has no platform. */
    public GridSeeds(Design design, Assembly assembly) {
        this(design, assembly, Effort.FULL);
    }

    /** The same with less effort. */
    public GridSeeds(Design design, Assembly assembly, Effort effort) {
        this.design = design;
        this.assembly = assembly;
        this.effort = effort;
    }

    /** The grid between two frequencies in Hz. */
    public double[] between(double from, double to) {
        return between(from, to, effort.perDecade());
    }

    /** The same with another number of points in each decade of the base. */
    public double[] between(double from, double to, int perDecade) {
        return seeded(new SeededGrid(from, to, perDecade), from, to);
    }

    /** The same on a base of one's own: rising frequencies in Hz, two or more. */
    public double[] on(double[] base) {
        return seeded(new SeededGrid(base), base[0], base[base.length - 1]);
    }

    /** The same with more points that must be on it. */
    double[] through(double from, double to, double... nodes) {
        SeededGrid grid = new SeededGrid(from, to, effort.perDecade());
        grid.addAll(nodes);
        return seeded(grid, from, to);
    }

    private double[] seeded(SeededGrid grid, double from, double to) {
        if (assembly != null && effort == Effort.FULL) {
            Resonances.between(assembly, from / 2, to * 1.1).forEach(p -> grid.peak(p.frequencyHz(), p.widthHz()));
            double counted = Resonances.countedTo(assembly, from / 2, to * 1.1);
            countedToHz = counted < to ? Math.min(countedToHz, counted) : countedToHz;
        } else if (assembly != null) {
            modes(grid, from, to);
        }
        resonance(grid, design.oscillator().resonator().supportResonance());
        design.cancellation().ifPresent(c -> correction(grid, c));
        kinks(grid);
        return grid.build();
    }

    /** What the grids made so far do not resolve, in sentences; nothing for a model that a band can show. */
    public List<String> passedOver() {
        List<String> told = new ArrayList<>();
        if (coarsestHz > 0) {
            told.add(String.format(Locale.ROOT, "a delay of %.4g s turns the cancellation round every %.3g Hz, "
                + "looked at every %.3g Hz only: "
                + "what lies between is not known", 1 / turnHz, turnHz, coarsestHz));
        }
        if (countedToHz < Double.POSITIVE_INFINITY) {
            told.add(String.format(Locale.ROOT, "platform and springs have more than 500 natural frequencies below %.5g Hz: narrow "
                + "resonances above it are not looked at one by one", countedToHz));
        }
        return told;
    }

    private void modes(SeededGrid grid, double from, double to) {
        DynamicStiffness stiffness = new DynamicStiffness(assembly);
        for (int m = 0; m < 6; m++) {
            some(grid, assembly.modes().frequencyHz(m), stiffness.dampingRatio(m));
        }
        if (assembly.surgeHz() < 1.1 * to) {
            Resonances.between(assembly, Math.max(2 * assembly.modes().frequencyHz(5), from), 1.1 * to)
                .forEach(p -> some(grid, p.frequencyHz(), p.widthHz() / p.frequencyHz() / 2));
        }
    }

    private static void some(SeededGrid grid, double centre, double ratio) {
        for (double away : ratio < WIDE ? AWAY : new double[] {0}) {
            grid.add(centre * (1 + Math.max(ratio, 1e-6) * away));
        }
    }

    private static void resonance(SeededGrid grid, Resonance r) {
        for (int i = 0; i < 3; i++) {
            if (r.on(i)) {
                grid.peak(r.frequencyHz().get(i), r.frequencyHz().get(i) / r.q().get(i));
            }
        }
    }

    private void correction(SeededGrid grid, Cancellation c) {
        resonance(grid, c.sensor().resonance());
        double delay = new CancellationPath(c).windingDelay();
        double step = grid.everyHz(1 / (16 * delay));
        if (step * delay > COARSEST_TURN) {
            turnHz = 1 / delay;
            coarsestHz = Math.max(coarsestHz, step);
        }
        if (c.path().sampled()) {
            double half = c.path().sampleRateHz() / 2;
            grid.addAll(half, Math.nextUp(half));
            c.path().filters().forEach(f -> sectionPoles(grid, f, c.path().sampleRateHz()));
        }
    }

    /** Complex poles radius rho at angle theta ring at theta fs/(2 pi), about (1 - rho) fs/pi wide. */
    private static void sectionPoles(SeededGrid grid, DigitalFilter filter, double sampleRateHz) {
        for (double[] s : filter.sections()) {
            double a1 = s[3];
            double a2 = s[4];
            if (a1 * a1 < 4 * a2) {
                double radius = Math.sqrt(a2);
                double angle = StrictMath.acos(Math.max(-1, Math.min(1, -a1 / (2 * radius))));
                grid.peak(angle * sampleRateHz / (2 * Math.PI), (1 - radius) * sampleRateHz / Math.PI);
            }
        }
    }

    private void kinks(SeededGrid grid) {
        Requirement r = design.requirement();
        add(grid, r.residual());
        add(grid, r.phaseNoise());
        add(grid, design.oscillator().staticPhaseNoise());
        for (Axis axis : Axis.ALL) {
            add(grid, design.vibration().drive(axis));
        }
    }

    private static void add(SeededGrid grid, Optional<LogCurve> curve) {
        curve.ifPresent(c -> grid.addAll(c.frequencies()));
    }
}
