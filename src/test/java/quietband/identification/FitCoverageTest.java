package quietband.identification;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.Synthetic.Instrument;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.model.Quantities;
import quietband.spectrum.LogGrid;

/** Over 200 seeds each true value lies inside its 95 % interval in 90 to 99 % of the fits. */
class FitCoverageTest {

    private static final int SEEDS = 200;
    private static final Fit.Settings PLAIN = new Fit.Settings(true, false, Optional.empty());

    /** A block on four springs in the plane of its centre; the model read is wrong, the truth is another. */
    private static ModelFile model(String springs, String centre) {
        return ModelFile.parse(Path.of("platform.yaml"), """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.3 ppb/g, y: -0.2 ppb/g, z: 0.5 ppb/g}}}
            platform:
              mass: 210 g
              size: {x: 62 mm, y: 62 mm, z: 24 mm}
              centre_of_gravity: %s
              springs:
                - name: corners
                  at: [{x: 24 mm, y: 24 mm}, {x: -24 mm, y: 24 mm}, {x: -24 mm, y: -24 mm}, {x: 24 mm, y: -24 mm}]
                  %s
            """.formatted(centre, springs));
    }

    /** How often each true value is inside, of all seeds. */
    private static void covers(ModelFile wrong, Design truth, double[] f, Instrument tool, List<String> free) {
        Quantities real = truth.quantities();
        List<List<Fitted.Value>> all = IntStream.rangeClosed(1, SEEDS).parallel().mapToObj(seed ->
            Fit.of(wrong, List.of(Synthetic.of(truth, f, tool, seed)), free, PLAIN).values()).toList();
        for (int i = 0; i < all.get(0).size(); i++) {
            int k = i;
            String of = all.get(0).get(i).of();
            double value = real.valueOf(of);
            long inside = all.stream().map(v -> v.get(k)).filter(v -> v.low() <= value && value <= v.high()).count();
            // binomial: 190 expected, standard deviation 3.1; the issue asks for 90 to 99 %
            assertThat(inside).as(of).isBetween(180L, 198L);
        }
    }

    @Test
    void one_mode_with_phase_from_a_model_wrong_by_three() {
        ModelFile wrong = model("stiffness: {x: 9 N/mm, y: 9 N/mm, z: 4 N/mm}\n      damping: {x: 2 N*s/m, y: 2 N*s/m, z: 9 N*s/m}", "{z: 0 mm}");
        Design truth = wrong.withNumber("platform.springs.corners.stiffness.z", 12000)
            .withNumber("platform.springs.corners.damping.z", 3).design();
        covers(wrong, truth, LogGrid.between(50, 10, 1000), new Instrument(Kind.TRANSMISSIBILITY, "z", 0.05, true, true),
            List.of("platform.springs.corners.stiffness.z", "platform.springs.corners.damping.z"));
    }
}
