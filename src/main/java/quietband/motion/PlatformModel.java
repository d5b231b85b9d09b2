package quietband.motion;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.platform.Assembly;
import quietband.platform.Lever;

/**
 * What every pass with the same plan has in common: the platform's equations and their exact step.
 *
 * @param assembly  the platform's matrices
 * @param equations in time
 * @param rows      combinations of accelerations that the resonator takes, then those of the sensors' channels when the
 *                  sensors are on the platform, in the body's coordinates
 * @param crystals  how many of them are the resonator's
 * @param stage     at rest; passes take copies
 */
record PlatformModel(Assembly assembly, PlatformEquations equations, List<double[]> rows, int crystals, LinearStage stage) {

    /** For a design with a platform. */
    static PlatformModel of(Design design, Plan plan) {
        Platform platform = design.platform().orElseThrow();
        Assembly assembly = new Assembly(platform);
        PlatformEquations equations = new PlatformEquations(platform, assembly, plan.loss(), !plan.linear());
        double[] resonator = Lever.of(assembly.fromCentre(design.oscillator().resonator().position()));
        List<double[]> rows = new ArrayList<>();
        Crystal.rows(design).forEach(row -> rows.add(Channel.through(row, resonator)));
        int crystals = rows.size();
        design.cancellation().filter(c -> c.sensor().onPlatform()).ifPresent(c -> {
            double[] sensor = Lever.of(assembly.fromCentre(c.sensor().position()));
            Channel.of(design, plan.linear()).forEach(x -> rows.add(Channel.through(x.row(), sensor)));
        });
        LinearStage stage = new LinearStage(equations.accelerations(0, rows), 3, plan.step(), plan.points());
        return new PlatformModel(assembly, equations, List.copyOf(rows), crystals, stage);
    }
}
