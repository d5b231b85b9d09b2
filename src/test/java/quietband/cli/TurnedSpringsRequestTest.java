package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform.Spring;
import quietband.model.Vibration.Shock;
import quietband.model.edit.ModelFile;
import quietband.motion.platform.ContactRecord;
import quietband.motion.run.VibrationRun;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Springs that lie on their side: preload and lift-off are those of the motion along them, not along the platform's z. */
class TurnedSpringsRequestTest {

    @TempDir
    private Path folder;

    private static long slack(Design d, double factor) {
        Shock shock = d.vibration().shock().orElseThrow();
        VibrationRun.Result ride = VibrationRun.shock(d, Axis.Y, new Shock(shock.shape(), factor * shock.peakG(), shock.duration()),
            new VibrationRun.Options(false, 0.1, false, 10_000, 0), share -> true);
        return ride.contacts().stream().filter(c -> !c.stop()).mapToLong(ContactRecord::times).sum();
    }

    @Test
    void a_spring_along_y_goes_slack_in_time_at_the_level_told() throws IOException {
        // turned by a quarter about x the springs' z is the platform's -y; corners apart, so that the travels are; room before the stops
        String text = Files.readString(Path.of("models/rough-ride.yaml"))
            .replace("z: 22 N/mm}", "z: 22 N/mm}\n      orientation: {axis: x, angle: 90 deg}")
            .replace("clearance: {x: 0.4 mm, y: 0.4 mm,", "clearance: {x: 0.4 mm, y: 0.9 mm,");
        Path model = Files.writeString(folder.resolve("lying.yaml"), text);
        Run run = Run.of("springs", model, "--natural-frequency", "x=160 Hz, y=130 Hz, z=200 Hz", "--parts", "rates", "--out",
            folder.resolve("s"));
        assertThat(run.status()).as(run.err()).isZero();
        JsonNode summary = new ObjectMapper().readTree(folder.resolve("s/summary.json").toFile());
        double level = summary.at("/lift_off_level").asDouble();
        Design d = ModelFile.read(folder.resolve("s/model.yaml")).design();
        Spring spring = d.platform().orElseThrow().springs().get(0);
        double free = 1e3 * spring.preload() / spring.stiffness().z();
        // what the preload has compressed is used up by the travel along y; twelve digits are written
        assertThat(level * summary.at("/travel/y/shock_mm").asDouble()).isCloseTo(free, within(1e-9 * free));
        assertThat(Math.abs(summary.at("/travel/y/shock_mm").asDouble() - summary.at("/travel/z/shock_mm").asDouble()))
            .isGreaterThan(0.1 * summary.at("/travel/y/shock_mm").asDouble());
        // 1 % below the level no spring goes slack in time whichever way the housing is pushed, 1 % above one does (steps of
        // 0.1 ms miss less than a thousandth of a peak)
        assertThat(slack(d, 0.99 * level) + slack(d, -0.99 * level)).isZero();
        assertThat(slack(d, 1.01 * level) + slack(d, -1.01 * level)).isPositive();
    }
}
