package quietband.vibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.spectrum.LogCurve;
import quietband.spectrum.LogCurve.Outside;

/** The vibration profiles in models/profiles against the overall levels published with them. */
class ShippedProfilesTest {

    private static final Path PROFILES = Path.of("models", "profiles");

    // System:  one-sided acceleration density, straight segments on log-log paper
    // Input:   the file's breakpoints
    // Result:  overall level in g rms: as published, and recomputed from the breakpoints to four digits
    // Ref:     the document named in each file's header, with its status (read | memory)
    // Note:    the published levels have two or three digits, so each may be off by half a unit of its last digit;
    //          NAVMAT's 6.0 is a rounding of 6.06 to the document's own one per cent. A factor 2 in density is 41 %,
    //          segments straight on linear paper change these totals by 1 to 30 %: both far outside.
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "navmat-screening,             6.06,   0.005,   6.0,   0.061",
        "gsfc-7000a-qualification,     14.14,  0.005,   14.1,  0.05",
        "gsfc-7000a-acceptance,        9.995,  0.0005,  10.0,  0.05",
        "mil-std-810-highway-vertical, 1.043,  0.0005,  1.04,  0.005",
        "nasa-7001a-workmanship,       6.784,  0.0005,  6.8,   0.05",
        "mil-std-810-minimum-integrity, 7.694, 0.0005,  7.7,   0.05",
        "mil-std-810-highway-transverse, 0.2035, 0.00005, 0.204, 0.0006",
        "rotor-cabin,                  2.479,  0.0005,  2.479, 0.0005"})
    void a_profiles_overall_level_is_the_published_one(String name, double recomputed, double lastDigit,
                                                       double published, double rounding) throws IOException {
        double rms = Math.sqrt(read(PROFILES.resolve(name + ".csv")).integral(0, Double.POSITIVE_INFINITY));
        assertThat(rms).isCloseTo(recomputed, within(lastDigit));
        assertThat(rms).isCloseTo(published, within(rounding));
    }

    @Test
    void every_profile_names_its_source_status_and_level() throws IOException {
        try (Stream<Path> files = Files.list(PROFILES)) {
            assertThat(files.toList()).hasSize(8).allSatisfy(file -> {
                List<String> head = Files.readAllLines(file).stream().filter(line -> line.startsWith("#")).toList();
                assertThat(head).anyMatch(line -> line.startsWith("# Source: "))
                    .anyMatch(line -> line.startsWith("# Status: ")).anyMatch(line -> line.startsWith("# Overall: "));
            });
        }
    }

    private static LogCurve read(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file).stream().filter(line -> !line.startsWith("#")).toList();
        assertThat(lines.get(0)).isEqualTo("frequency_hz,density_g2_per_hz");
        double[][] rows = lines.stream().skip(1)
            .map(line -> Stream.of(line.split(",", -1)).mapToDouble(Double::parseDouble).toArray())
            .toArray(double[][]::new);
        return LogCurve.logLog(column(rows, 0), column(rows, 1), Outside.ZERO);
    }

    private static double[] column(double[][] rows, int index) {
        return Stream.of(rows).mapToDouble(row -> row[index]).toArray();
    }
}
