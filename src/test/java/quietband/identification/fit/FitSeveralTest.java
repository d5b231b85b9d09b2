package quietband.identification.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.Synthetic;
import quietband.identification.Synthetic.Instrument;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.spectrum.LogGrid;

/** Platform, path and resonator out of three files at once. */
class FitSeveralTest {

    /** What is free, and what it really is. */
    private static final Map<String, Double> TRUTH = new LinkedHashMap<>();

    static {
        TRUTH.put("platform.springs.corners.stiffness.z", 13_000.0);
        TRUTH.put("platform.springs.corners.damping.z", 2.6);
        TRUTH.put("cancellation.error.gain.z", -0.03);
        TRUTH.put("cancellation.path.latency", 13e-6);
        TRUTH.put("cancellation.sensor.bandwidth.z", 4200.0);
        TRUTH.put("oscillator.resonator.sensitivity.z", 0.61e-9);
    }

    @Test
    void platform_path_and_resonator_come_out_of_three_files_together() {
        ModelFile model = ModelFile.parse(java.nio.file.Path.of("whole.yaml"),
            FitCoverageTest.model(FitCoverageTest.springs(16, 12, 4, 3), "{z: -3 mm}").text() + """
                cancellation:
                  weights: {x: 0.3 ppb/g, y: -0.2 ppb/g, z: 0.5 ppb/g}
                  sensor: {position: {z: 2 mm}, bandwidth: {x: 6 kHz, y: 6 kHz, z: 6 kHz}}
                  path: {latency: 8 us}
                """);
        double[] numbers = model.design().quantities().values();
        TRUTH.forEach((path, v) -> {
            for (int slot : model.design().quantities().find(path).slots()) {
                numbers[slot] = v;
            }
        });
        Design truth = model.design().with(model.design().quantities().with(numbers));
        double worst = 0;
        double sum = 0;
        int seeds = 4;
        for (int seed = 1; seed <= seeds; seed++) {
            List<MeasuredFile> sources = new ArrayList<>();
            sources.add(Synthetic.of(truth, LogGrid.between(30, 15, 500), new Instrument(Kind.TRANSMISSIBILITY, "z", 0.02, true, true),
                seed));
            sources.add(Synthetic.of(truth, LogGrid.between(25, 20, 4000), new Instrument(Kind.PATH, "z", 0.01, true, false), seed + 100));
            sources.add(Synthetic.of(truth, LogGrid.between(30, 10, 2000), new Instrument(Kind.SENSITIVITY, "z", 0.05, false, true),
                seed + 200));
            FitResult fit = ModelFit.of(model, sources, List.copyOf(TRUTH.keySet()), new ModelFit.Settings(true, false, Optional.empty()));
            assertThat(fit.curves()).hasSize(3);
            for (FitResult.Value v : fit.values()) {
                assertThat(v.state()).as(v.of()).isEqualTo(FitResult.State.FOUND);
                double z = (v.value() - TRUTH.get(v.of())) / v.standardError();
                worst = Math.max(worst, Math.abs(z));
                sum += z * z / (seeds * TRUTH.size());
            }
        }
        // 24 normal deviates: mean square 1 +- 0.29, the largest beyond 4 once in six hundred such sets
        assertThat(worst).isLessThan(4);
        assertThat(sum).isBetween(0.3, 2.1);
    }
}
