package quietband.motion.platform;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.motion.correction.ResonatorRun;
import quietband.motion.correction.SensorChannel;
import quietband.motion.signal.LinearStage;
import quietband.motion.signal.TimeStepping;
import quietband.platform.Assembly;
import quietband.platform.PointMotion;

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
public record PlatformModel(Assembly assembly, PlatformEquations equations, List<double[]> rows, int crystals, LinearStage stage) {

    /** For a design with a platform. */
    public static PlatformModel of(Design design, TimeStepping plan) {
        Platform platform = design.platform().orElseThrow();
        Assembly assembly = new Assembly(platform);
        PlatformEquations equations = new PlatformEquations(platform, assembly, plan.loss(), !plan.linear());
        double[] resonator = PointMotion.of(assembly.fromCentre(design.oscillator().resonator().position()));
        List<double[]> rows = new ArrayList<>();
        ResonatorRun.rows(design).forEach(row -> rows.add(SensorChannel.through(row, resonator)));
        int crystals = rows.size();
        design.cancellation().filter(c -> c.sensor().onPlatform()).ifPresent(c -> {
            double[] sensor = PointMotion.of(assembly.fromCentre(c.sensor().position()));
            SensorChannel.of(design, plan.linear()).forEach(x -> rows.add(SensorChannel.through(x.row(), sensor)));
        });
        LinearStage stage = new LinearStage(equations.accelerations(0, rows), 3, plan.step(), plan.points());
        return new PlatformModel(assembly, equations, List.copyOf(rows), crystals, stage);
    }
}
