package quietband.study.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Design;
import quietband.response.FrequencyTable;
import quietband.study.LightPlatform;

/** What the parts of an assessment say of a platform whose axes are single oscillators, and of a result of tolerance. */
class AssessedPartsTest {

    private static final String BAND = "requirement: "
        + "{band: {from: 10 Hz, to: 2 kHz}, residual: [{frequency: 10 Hz, limit: 0.1 ppb/g}]}\n";

    @TempDir
    Path directory;

    // a gain error e leaves e of what the sensor sees; the springs leave |A|: what is needed and given follows from e, |A|, G/limit = 20
    @Test
    void attenuations_are_those_of_a_gain_error_and_one_oscillator() {
        Design design = LightPlatform.with("cancellation: {sensor: {place: platform}, error: {gain: 3 %}}\n" + BAND).design();
        FrequencyTable table = FrequencyTable.of(design, new double[] {20, 51, 200, 900}, 1);
        NeededAttenuation needed = new NeededAttenuation(design, table);
        for (FrequencyTable.Row row : table.rows()) {
            double ratio = LightPlatform.ratio(row.frequencyHz());
            // both are closed forms: rounding alone, against 3 dB of a factor sqrt 2
            assertThat(needed.correctionMust(row)).isCloseTo(20 * Math.log10(20 * ratio), within(1e-6));
            assertThat(needed.correctionGives(row)).isCloseTo(-20 * Math.log10(0.03), within(1e-6));
            assertThat(needed.springsMust(row)).isCloseTo(20 * Math.log10(20 * 0.03), within(1e-6));
            assertThat(needed.springsGive(row)).isCloseTo(-20 * Math.log10(ratio), within(1e-6));
        }
    }

    // three translations, k/m; three rotations of a block on springs at +-30, +-20 mm: sum of k r^2 over m (a^2 + b^2)/12
    @Test
    void resonances_are_the_six_modes_and_the_support_rising() {
        Design design = LightPlatform.with(BAND).withValue("oscillator.resonator.support_resonance", "{x: {frequency: 1500 Hz, q: 20}}")
            .design();
        double[] k = LightPlatform.STIFFNESS.stream().mapToDouble(Double::doubleValue).toArray();
        double m = LightPlatform.MASS / 12;
        double[] squares = {k[0] / LightPlatform.MASS, k[1] / LightPlatform.MASS, k[2] / LightPlatform.MASS,
            k[2] * 0.02 * 0.02 / (m * (0.05 * 0.05 + 0.03 * 0.03)), k[2] * 0.03 * 0.03 / (m * (0.08 * 0.08 + 0.03 * 0.03)),
            (k[0] * 0.02 * 0.02 + k[1] * 0.03 * 0.03) / (m * (0.08 * 0.08 + 0.05 * 0.05))};
        double[] expected = Arrays.copyOf(Arrays.stream(squares).map(w2 -> Math.sqrt(w2) / (2 * Math.PI)).toArray(), 7);
        expected[6] = 1500;
        Arrays.sort(expected);
        List<Double> found = ExpectedResonances.of(design);
        assertThat(found).hasSize(7);
        for (int i = 0; i < 7; i++) {
            // damping of at most 1 % shifts a mode by 5e-5
            assertThat(found.get(i)).isCloseTo(expected[i], Percentage.withPercentage(0.01));
        }
    }

    @Test
    void resonances_beyond_the_band_are_left_out() {
        Design design = LightPlatform.with(BAND.replace("from: 10 Hz, to: 2 kHz", "from: 60 Hz, to: 70 Hz")).design();
        // y alone: sqrt(60e3/0.35)/(2 pi) = 65.90 Hz; x is at 51, z at 81 Hz, z's turns above; damping shifts by 5e-5 at most
        assertThat(ExpectedResonances.of(design)).first().satisfies(f -> assertThat(f).isCloseTo(65.90, within(0.01)));
        assertThat(ExpectedResonances.of(design)).allMatch(f -> f >= 60 && f <= 70);
    }

    private Path summary(String text) throws IOException {
        return Files.writeString(directory.resolve("summary.json"), text);
    }

    @Test
    void a_yield_is_read_from_its_own_object_and_for_its_own_model_alone() throws IOException {
        Path file = summary("{\"estimate\": 0.1, \"units\": 4000, \"model_hash\": \"ab\", "
            + "\"yield\": {\"estimate\": 0.9, \"low\": 0.85, \"high\": 0.94, \"confidence\": 0.95}, "
            + "\"other\": {\"yield\": {\"high\": 0.3}}, \"rows\": [{\"yield\": {\"low\": 0.2}}]}");
        assertThat(KnownYield.of(file, "ab")).contains(new KnownYield(0.9, 0.85, 0.94, 0.95, "4000", true));
        assertThat(KnownYield.of(file, "ac")).isEmpty();
        assertThat(KnownYield.of(directory.resolve("none.json"), "ab")).isEmpty();
    }

    @Test
    void a_summary_cut_short_or_without_a_number_says_nothing() throws IOException {
        assertThat(KnownYield.of(summary("{\"model_hash\": \"ab\", \"yield\": {\"estimate\": 0.9,"), "ab")).isEmpty();
        assertThat(KnownYield.of(summary("{\"model_hash\": \"ab\", \"yield\": {\"estimate\": 0.9}}"), "ab")).isEmpty();
    }
}
