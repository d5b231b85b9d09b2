package quietband.tolerance.draw;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.tolerance.campaign.MonteCarlo;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.judge.MonteCarloPlan;

/** Small models whose scatter has a closed form, and samples drawn from them. */
public final class ScatterModels {

    public static final int UNITS = 200_000;

    private ScatterModels() { }

    /** Bolted down, one axis sensitive by 1 ppb/g, an ideal correction but for its errors; limit and tolerances follow. */
    public static Design corrected(String limit, String tolerances) {
        return design("requirement:\n  band: {from: 10 Hz, to: 2 kHz}\n  residual: [{frequency: 10 Hz, limit: " + limit + "}]\n"
            + tolerances);
    }

    public static Design design(String rest) {
        return ModelFile.parse(Path.of("model.yaml"), "quietband: 1\noscillator:\n  carrier: 10 MHz\n"
            + "  resonator:\n    sensitivity: {x: 1 ppb/g}\n"
            + "cancellation:\n  sensor: {place: housing}\n" + rest).design();
    }

    /** A figure of every unit, sorted. */
    static double[] sorted(Design design, int units, ToDoubleFunction<Quantities> figure) {
        double[] values = drawn(design, units, figure);
        Arrays.sort(values);
        return values;
    }

    /** A figure of every unit, in the order of the units. */
    static double[] drawn(Design design, int units, ToDoubleFunction<Quantities> figure) {
        ToleranceDraws scatter = ToleranceDraws.of(design);
        double[] values = new double[units];
        for (int u = 0; u < units; u++) {
            values[u] = figure.applyAsDouble(scatter.at(scatter.normals(3, u, 0)));
        }
        return values;
    }

    /** What a path names first, quick to read from many units. */
    static ToDoubleFunction<Quantities> at(Design design, String path) {
        int slot = design.quantities().find(path).slot(0);
        return unit -> unit.value(slot);
    }

    /** Five standard errors of the place of a percentile: its share may be off by sqrt(p (1 - p)/n). */
    public static double fiveErrors(double share) {
        return 5 * Math.sqrt(share * (1 - share) / UNITS);
    }

    public static MonteCarloResult run(Design design, long units, int threads, int points) {
        double[] table = quietband.spectrum.LogGrid.between(points, design.requirement().fromHz(), design.requirement().toHz());
        return new MonteCarlo(new MonteCarloPlan(design, 3), table, threads).run(units, () -> false, n -> { });
    }
}
