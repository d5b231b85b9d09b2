package quietband.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quietband.demand.PhaseNoise;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.spectrum.LogGrid;

/** The customer's line turned into ppb per g, and back. */
class AllowedTest {

    private static final Path MAIN = Path.of("models/ridge-relay.yaml");

    private static Design design(String apply, String residual) throws IOException {
        String text = Files.readString(MAIN).replace("apply: one_at_a_time", "apply: " + apply)
            .replace("residual: [{frequency: 10 Hz, limit: 0.05 ppb/g}, {frequency: 2 kHz, limit: 0.05 ppb/g}]", residual);
        return ModelFile.parse(MAIN, text).design();
    }

    // two conversions and one addition in double precision: far below 1e-9 dB
    @ParameterizedTest
    @ValueSource(strings = {"one_at_a_time", "together"})
    void a_residual_exactly_on_the_allowed_value_has_phase_noise_exactly_on_its_limit(String apply) throws IOException {
        PhaseNoise noise = new PhaseNoise(design(apply, "residual: from_phase_noise"));
        for (double f : LogGrid.between(60, 10, 2000)) {
            for (PhaseNoise.Row row : noise.rows()) {
                double[] squared = new double[3];
                Arrays.fill(squared, noise.allowedPerG(row, f) * noise.allowedPerG(row, f));
                double total = 10 * Math.log10(noise.vibration(row, f, squared) + noise.floor(Stack.COMBINED, f));
                assertThat(total).as("%s at %s Hz", row.label(), f).isCloseTo(noise.limitDbc(f).orElseThrow(), within(1e-9));
            }
        }
    }

    @Test
    void a_design_scaled_onto_the_derived_limit_meets_its_phase_noise_exactly() throws IOException {
        Design design = design("one_at_a_time", "residual: from_phase_noise").withCancellation(java.util.Optional.empty());
        ResidualPoint worst = Assessor.assess(design).verdict(Stack.ISOLATED).worst();
        double factor = worst.limitPerG() / worst.residualPerG();
        Quantities q = design.quantities();
        for (String axis : new String[] {"x", "y", "z"}) {
            String path = "oscillator.resonator.sensitivity." + axis;
            q = q.with(path, q.valueOf(path) * factor);
        }
        Assessment scaled = Assessor.assess(design.with(q).withCancellation(java.util.Optional.empty()));
        RequirementResult noise = scaled.requirements().stream().filter(r -> r.name().equals("phase_noise")).findFirst()
            .orElseThrow();
        // the maximum of residual over limit is known to 1e-4 dB, and with it where it lies
        assertThat(scaled.verdict(Stack.ISOLATED).worst().marginDb()).isCloseTo(0, within(1e-4));
        assertThat(noise.marginDb()).isCloseTo(0, within(1e-4));
        assertThat(noise.frequencyHz()).isCloseTo(worst.frequencyHz(), within(0.05));
    }

    @Test
    void nothing_is_allowed_where_the_floor_alone_exceeds() throws IOException {
        Design loud = ModelFile.parse(MAIN, Files.readString(MAIN).replace("level: -138 dBc/Hz", "level: -100 dBc/Hz")).design();
        PhaseNoise noise = new PhaseNoise(loud);
        // -100 dBc/Hz at 10 MHz is -60 dBc/Hz at 1 GHz; the limit is -75
        assertThat(noise.allowedPerG(noise.rows().get(0), 10)).isZero();
    }

    @Test
    void causes_at_their_ideal_contribute_nothing() throws IOException {
        String ideal = Files.readString(MAIN).replace("error: {gain: {x: 1 %, y: 1 %, z: -1 %}, phase: -0.5 deg, delay: 2 us}",
            "error: {gain: 0}").replace("cross_axis: 0.5 %", "cross_axis: 0").replace("position: {x: 4 mm, y: 3 mm, z: 4 mm}",
            "position: {z: 3 mm}").replace("support_resonance:", "# support_resonance:");
        Design design = ModelFile.parse(MAIN, ideal).design();
        ResidualResponse response = new ResidualResponse(design);
        for (double f : LogGrid.between(40, 10, 2000)) {
            response.at(f);
            for (Cause cause : EnumSet.complementOf(EnumSet.of(Cause.PATH))) {
                for (double y : Contribution.of(response, Stack.COMBINED, cause).alone()) {
                    assertThat(y / 1e-9).as("%s at %s Hz, ppb/g", cause, f).isLessThan(1e-12);
                }
            }
        }
    }

    @Test
    void with_every_cause_ideal_nothing_is_left() throws IOException {
        ResidualResponse response = new ResidualResponse(ModelFile.parse(MAIN, Files.readString(MAIN)).design());
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : LogGrid.between(40, 10, 2000)) {
            response.at(f);
            response.residual(Stack.COMBINED, EnumSet.noneOf(Cause.class), re, im);
            for (int j = 0; j < 3; j++) {
                assertThat(Math.hypot(re[j], im[j]) / 1e-9).isLessThan(1e-12);
            }
        }
    }
}
