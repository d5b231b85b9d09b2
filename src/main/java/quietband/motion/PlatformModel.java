package quietband.motion;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.Lever;

/**
 * What every pass with the same plan has in common: the platform's equations and their exact step.
 *
 * @param assembly  the platform's matrices
 * @param equations in time
 * @param levers    of the resonator and, when it is elsewhere, of the sensors
 * @param sensorAt  number of the sensors' first row among the accelerations
 * @param stage     at rest; passes take copies
 */
record PlatformModel(Assembly assembly, PlatformEquations equations, List<double[]> levers, int sensorAt,
                     LinearStage stage) {

    /** For a design with a platform. */
    static PlatformModel of(Design design, Plan plan) {
        Platform platform = design.platform().orElseThrow();
        Assembly assembly = new Assembly(platform);
        PlatformEquations equations = new PlatformEquations(platform, assembly, plan.loss(), !plan.linear());
        Vec resonator = design.oscillator().resonator().position();
        List<double[]> levers = new ArrayList<>();
        levers.add(Lever.of(assembly.fromCentre(resonator)));
        Vec sensor = design.cancellation().filter(c -> c.sensor().onPlatform()).map(c -> c.sensor().position())
            .orElse(resonator);
        int sensorAt = sensor.equals(resonator) ? 0 : 3;
        if (sensorAt == 3) {
            levers.add(Lever.of(assembly.fromCentre(sensor)));
        }
        LinearStage stage = new LinearStage(equations.accelerations(0, levers), 3, plan.step(), plan.points());
        return new PlatformModel(assembly, equations, List.copyOf(levers), sensorAt, stage);
    }
}
