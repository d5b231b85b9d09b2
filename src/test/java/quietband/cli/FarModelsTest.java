package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Models far beyond use are assessed all the same, and told what was not looked at. */
class FarModelsTest {

    @TempDir
    private Path temp;

    private String assessed(String found, String instead) throws IOException {
        String text = Files.readString(Path.of("models/ridge-relay.yaml"));
        assertThat(text).contains(found);
        for (String file : new String[] {"profiles/rotor-cabin.csv", "lots/ridge-lot.csv"}) {
            Files.createDirectories(temp.resolve(file).getParent());
            Files.copy(Path.of("models").resolve(file), temp.resolve(file));
        }
        Path model = Files.writeString(temp.resolve("far.yaml"), text.replace(found, instead));
        Run run = Run.of("assess", model, "--out", temp.resolve("out"), "--points", 20);
        assertThat(run.status()).as(run.err()).isZero();
        return Files.readString(temp.resolve("out/summary.json"));
    }

    @ParameterizedTest
    @Timeout(60)
    @CsvSource(delimiter = '|', value = {
        "latency: 8 us | latency: 0.8 s | gaps in the coverage, too many to search for causes and cures",
        "latency: 8 us | latency: 20 ms | gaps in the coverage, of which only the 20 widest are searched for a cause and a cure",
        "band: {from: 10 Hz, to: 2 kHz} | band: {from: 10 Hz, to: 2 MHz} | more than 500 natural frequencies below",
        "mass: 0.6 g | mass: 600 kg | more than 500 natural frequencies below 1"})
    void what_is_not_looked_at_is_told(String found, String instead, String warning) throws IOException {
        assertThat(assessed(found, instead)).contains(warning);
    }

    @Test
    @Timeout(60)
    void a_tap_ten_seconds_late_turns_between_the_points_that_are_looked_at() throws IOException {
        Files.writeString(temp.resolve("late.csv"), "sensor_axis,kind,index,b0,b1,b2,a1,a2\nx,tap,0,2.3,,,,\nx,tap,1000000,-1.3,,,,\n"
            + "y,tap,0,1,,,,\nz,tap,0,1,,,,\n");
        assertThat(assessed("taps: [2.3, -1.3] ", "filter: late.csv ")).contains("turns the cancellation round every 0.100 Hz, looked at "
            + "every 0.0", "Hz only: what lies between is not known");
    }

    @Test
    @Timeout(60)
    void a_sensitivity_in_whole_parts_makes_an_index_beyond_any_table() throws IOException {
        assertThat(assessed("z: 0.48 ppb/g", "z: 0.48 1/g")).contains("modulation index of");
    }
}
