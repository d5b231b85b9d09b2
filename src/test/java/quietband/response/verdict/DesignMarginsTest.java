package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.NumberSlot;

/** What searches go by against the whole assessment. */
class DesignMarginsTest {

    /** A design whose platform, sensor place and path differ by up to 30 %, or 3 mm. */
    private static Design varied(Design base, long seed) {
        Random random = new Random(seed);
        double[] v = base.quantities().values();
        for (int i = 0; i < v.length; i++) {
            NumberSlot s = base.quantities().slot(i);
            boolean factor = s.path()
                .matches("platform.*(stiffness|damping|mass|loss_factor).*|cancellation.path.latency")
                && !s.path().contains("limits") && !s.path().contains("stops");
            v[i] *= factor ? 1 + 0.6 * (random.nextDouble() - 0.5) : 1;
            v[i] += s.path().matches(".*(centre_of_gravity|sensor.position).*") ? 6e-3 * (random.nextDouble() - 0.5)
                : 0;
        }
        return base.with(base.quantities().with(v));
    }

    @ParameterizedTest
    @ValueSource(strings = {"ridge-relay", "trial-a", "correction-only", "platform-only", "soft-platform"})
    void it_agrees_with_the_assessment_on_everything_asked(String name) {
        Design base = ModelFile.read(Path.of("models/" + name + ".yaml")).design();
        for (long seed = 0; seed < 4; seed++) {
            Design design = varied(base, seed);
            Assessment full = Assessor.assess(design);
            DesignMargins coarse = DesignMargins.of(design);
            for (RequirementResult r : full.requirements()) {
                String which = name + " " + seed + " " + r.name();
                if (r.name().equals("residual")) {
                    // peaks between 40 points a decade, followed to a five-hundredth of their distance: hundredths of a dB
                    assertThat(coarse.marginDb()).as(which).isBetween(r.marginDb() - 0.001, r.marginDb() + 0.02);
                } else {
                    double over = coarse.requirements().stream().filter(c -> c.name().equals(r.name())).findFirst().orElseThrow().overDb();
                    // trapezoids over 40 points a decade: half a percent, 0.05 dB
                    assertThat(over).as(which).isCloseTo(r.overDb(), within(0.1));
                }
            }
        }
    }
}
