package quietband.identification.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.Synthetic;
import quietband.identification.Synthetic.Instrument;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.spectrum.LogGrid;

/** Over 200 seeds each true value lies inside its 95 % interval in 90 to 99 % of the fits. */
public class FitCoverageTest {

    private static final int SEEDS = 200;
    private static final ModelFit.Settings PLAIN = new ModelFit.Settings(true, false, Optional.empty());

    /** A block on four springs 3 mm below the origin; the model read is wrong, the truth is another. */
    public static ModelFile model(String springs, String centre) {
        return ModelFile.parse(Path.of("platform.yaml"), """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.3 ppb/g, y: -0.2 ppb/g, z: 0.5 ppb/g}}}
            platform:
              mass: 210 g
              size: {x: 62 mm, y: 62 mm, z: 24 mm}
              centre_of_gravity: %s
              springs:
                - name: corners
                  at: [{x: 24 mm, y: 24 mm, z: -3 mm}, {x: -24 mm, y: 24 mm, z: -3 mm}, {x: -24 mm, y: -24 mm, z: -3 mm},
                       {x: 24 mm, y: -24 mm, z: -3 mm}]
                  %s
            """.formatted(centre, springs));
    }

    /** How often each true value is inside, of all seeds. */
    private static void covers(ModelFile wrong, Design truth, double[] f, Instrument tool, List<String> free) {
        Quantities real = truth.quantities();
        List<List<FitResult.Value>> all = IntStream.rangeClosed(1, SEEDS).parallel().mapToObj(seed ->
            ModelFit.of(wrong, List.of(Synthetic.of(truth, f, tool, seed)), free, PLAIN).values()).toList();
        for (int i = 0; i < all.get(0).size(); i++) {
            int k = i;
            String of = all.get(0).get(i).of();
            double value = real.valueOf(of);
            long inside = all.stream().map(v -> v.get(k)).filter(v -> v.low() <= value && value <= v.high()).count();
            // binomial: 190 expected, standard deviation 3.1; the issue asks for 90 to 99 %
            assertThat(inside).as(of).isBetween(180L, 198L);
        }
    }

    private static final List<String> FOUR = List.of("platform.springs.corners.stiffness.x", "platform.springs.corners.stiffness.z",
        "platform.springs.corners.damping.x", "platform.springs.corners.damping.z");

    /** Off by a factor of three: stiffness x and z three times too low and too high, damping the other way round. */
    private static ModelFile wrong(Design truth, ModelFile model) {
        Quantities q = truth.quantities();
        return model.withNumber(FOUR.get(0), q.valueOf(FOUR.get(0)) / 3).withNumber(FOUR.get(1), q.valueOf(FOUR.get(1)) * 3)
            .withNumber(FOUR.get(2), q.valueOf(FOUR.get(2)) * 3).withNumber(FOUR.get(3), q.valueOf(FOUR.get(3)) / 3);
    }

    @Test
    void one_mode_with_phase_and_stated_noise() {
        ModelFile model = model(springs(16, 12, 4, 3), "{z: -3 mm}");
        covers(wrong(model.design(), model), model.design(), LogGrid.between(30, 15, 500),
            new Instrument(Kind.TRANSMISSIBILITY, "z", 0.05, true, true), List.of(FOUR.get(1), FOUR.get(3)));
    }

    @Test
    void one_mode_without_phase_and_without_a_word_on_the_noise() {
        ModelFile model = model(springs(16, 12, 4, 3), "{z: -3 mm}");
        covers(wrong(model.design(), model), model.design(), LogGrid.between(30, 15, 500),
            new Instrument(Kind.TRANSMISSIBILITY, "z", 0.05, false, false), List.of(FOUR.get(1), FOUR.get(3)));
    }

    @Test
    void coupled_modes_on_two_axes_with_the_centre_of_gravity() {
        ModelFile model = model(springs(16, 22, 4, 5), "{z: 5 mm}");
        ModelFile wrong = wrong(model.design(), model).withNumber("platform.centre_of_gravity.z", 0);
        covers(wrong, model.design(), LogGrid.between(30, 25, 400), new Instrument(Kind.TRANSMISSIBILITY, "xz", 0.04, true, true),
            List.of(FOUR.get(0), FOUR.get(1), FOUR.get(2), FOUR.get(3), "platform.centre_of_gravity.z"));
    }

    /**
     * Bounce along x and rock about y would both be at 88 Hz; the centre of gravity 2 mm above the springs moves them to 85.6
     * and 91.6 Hz.
     */
    @Test
    void close_modes_without_phase() {
        ModelFile model = model(springs(16, 10.3, 4, 2.5), "{z: -1 mm}");
        covers(wrong(model.design(), model), model.design(), LogGrid.between(30, 40, 240),
            new Instrument(Kind.TRANSMISSIBILITY, "xz", 0.03, false, true), FOUR);
    }

    public static String springs(double kx, double kz, double cx, double cz) {
        return """
            stiffness: {x: %1$s N/mm, y: %1$s N/mm, z: %2$s N/mm}
                  damping: {x: %3$s N*s/m, y: %3$s N*s/m, z: %4$s N*s/m}""".formatted(kx, kz, cx, cz);
    }
}
