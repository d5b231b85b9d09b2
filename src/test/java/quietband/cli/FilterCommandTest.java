package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.demand.ResidualPoint;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;

/** The command filter as a person calls it. */
class FilterCommandTest {

    @TempDir
    private Path folder;

    private static double number(String json, String object, String name) {
        Matcher m = Pattern.compile("\"" + name + "\" : ([-0-9.e]+)").matcher(json.substring(json.indexOf("\"" + object + "\"")));
        assertThat(m.find()).as(object + "." + name).isTrue();
        return Double.parseDouble(m.group(1));
    }

    @Test
    void whole_numbers_are_written_as_model_and_table_and_told_as_assess_does() throws IOException {
        Run run = Run.of("filter", "models/ridge-relay.yaml", "--count", "6", "--bits", "16", "--format", "json", "--points", "50", "--out",
            folder.resolve("out"));
        assertThat(run.status()).as(run.err()).isZero();
        Design changed = ModelFile.read(folder.resolve("out/model.yaml")).design();
        List<StackVerdict> verdicts = Assessor.assess(changed).verdicts();
        ResidualPoint worst = verdicts.get(verdicts.size() - 1).worst();
        double ratio = worst.residualPerG() / worst.limitPerG();
        // twelve digits in the summary
        assertThat(number(run.out(), "residual_after", "worst_ratio")).isCloseTo(ratio, within(1e-9 * ratio));
        assertThat(number(run.out(), "residual_before", "worst_ratio")).isGreaterThan(ratio);
        assertThat(run.out()).contains("\"noise_gain_db\"", "\"crossover\"", "\"rise_db\"");
        List<String> firmware = Files.readAllLines(folder.resolve("out/firmware.csv"));
        assertThat(firmware).hasSize(1 + 3 * 6);
        String[] row = firmware.get(1).split(",", -1);
        DigitalFilter x = changed.cancellation().orElseThrow().path().filters().get(0);
        // integer / 2^shift is the coefficient over 2^scale
        assertThat(Math.scalb(Double.parseDouble(row[3]), Integer.parseInt(row[10]) - Integer.parseInt(row[6]))).isEqualTo(x.taps()[0]);
        // 0.22 ppb/g after the turn by 90 deg, 5 ppb/V, 2^16 counts over 40 g
        assertThat(Files.readAllLines(folder.resolve("out/weights.csv"))).startsWith("axis,ppb_per_g,volts_per_g,counts_per_g",
            "x,0.220000000000,0.0440000000000,1638.40000000");
        List<String> allowed = Files.readAllLines(folder.resolve("out/allowed.csv"));
        assertThat(allowed.get(0)).isEqualTo("frequency_hz,axis,gain_percent,phase_deg,delay_us");
        assertThat(allowed).hasSize(1 + 3 * 50);
        assertThat(Files.readString(folder.resolve("out/report.html"))).contains("Polarity".toLowerCase(java.util.Locale.ROOT),
            "chart-region", "chart-group-delay", "sign reversed");
    }

    @Test
    void a_bound_that_binds_is_told_with_its_frequency() {
        Run run = Run.of("filter", "models/ridge-relay.yaml", "--count", "4", "--max-gain", "3 dB", "--points", "50", "--out",
            folder.resolve("out"));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).containsPattern("active constraint: the largest gain of filter [xyz], 3.00 dB, at [0-9.]+ k?Hz")
            .containsPattern("residual norm [0-9.]+ % above the least without any").contains("bench x: cancellation off");
    }

    private Path model(String path) throws IOException {
        Path file = folder.resolve("m.yaml");
        Files.writeString(file, "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\ncancellation: {sensor: "
            + "{place: housing, bandwidth: 5 kHz}, path: {" + path + "}}\n");
        return file;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "sample_rate: 48 kHz, sections: [[1, 0, 0, -2.1, 1.1]] | cancellation.path.sections | unstable",
        "sample_rate: 0 Hz | sample_rate | 0 Hz",
        "latency: 1 us | cancellation.path.sample_rate | add"})
    void what_cannot_be_designed_for_is_refused_and_nothing_is_written(String path, String where, String what) throws IOException {
        Run run = Run.of("filter", model(path), "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(where, what);
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "sensor_axis,kind,index,b0,b1,b2,a1,a2,rate_hz;x,tap,0,1,,,,,96000 | rate_hz at line 2 | 48 kHz",
        "sensor_axis,kind,index,b0,b1,b2,a1;x,tap,0,1,,, | a2 | f.csv",
        "sensor_axis,kind,index,b0,b1,b2,a1,a2;x,section,0,1,0,0,-2.1,1.1 | unstable | a2"})
    void a_filter_file_that_is_wrong_is_refused(String text, String where, String what) throws IOException {
        Files.writeString(folder.resolve("f.csv"), text.replace(';', '\n') + "\n");
        Run run = Run.of("filter", model("sample_rate: 48 kHz, filter: f.csv"), "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(where, what);
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void more_coefficients_than_data_are_refused_with_both_counts() throws IOException {
        Run run = Run.of("filter", model("sample_rate: 48 kHz"), "--count", "41", "--points", "20", "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains("123 coefficients", "120 numbers", "--points");
        assertThat(Run.of("filter", model("sample_rate: 48 kHz"), "--form", "sections", "--count", "11").err())
            .contains("between 1 and 10");
        assertThat(Run.of("filter", model("sample_rate: 48 kHz"), "--bits", "3").err()).contains("--bits 3", "between 6 and 40");
        assertThat(folder.resolve("out")).doesNotExist();
    }
}
