package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What could never end, or never fit into memory, is refused before it begins. */
@Timeout(30)
class BoundsTest {

    private static final String MAIN = "models/ridge-relay.yaml";

    @TempDir
    private Path temp;

    private void refused(String said, String line) {
        Run run = Run.of((Object[]) (line.replace("MAIN", MAIN) + " --out " + temp.resolve("out")).split(" "));
        assertThat(run.status()).as(run.err()).isEqualTo(2);
        assertThat(run.err()).contains(said).doesNotContain("Exception");
        assertThat(temp.resolve("out")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', value = {
        "simulate MAIN --drive dwell --frequency 1GHz | --frequency: '1GHz' is beyond 10 MHz; give less",
        "simulate MAIN --drive random --time-rate 1GHz | --time-rate: '1GHz' is beyond 100 MHz; give less",
        "simulate MAIN --drive shock --time-rate 1GHz | --time-rate: '1GHz' is beyond 100 MHz; give less",
        "simulate MAIN --drive shock --duration 1e300s | --duration: '1e300s' is beyond 1e6 s; give less",
        "simulate MAIN --drive random --duration 1e6s --time-rate 1MHz | takes 1.00e+12 points of time; at most 1.00e+10: shorten",
        "simulate MAIN --drive sweep --rate 1e-9 | raise --rate",
        "simulate MAIN --drive sweep --points 2000000 | --points 2000000: a sweep stops at each of them; at most 20000",
        "simulate models/platform-only.yaml --drive random --duration 1s --time-rate 100MHz --full-rate | samples: lower --time-rate",
        "assess MAIN --threads 100000 | --threads 100000: between 1 and 256",
        "tolerance MAIN --threads 100000 | --threads 100000: between 1 and 256",
        "shaker models/runs/ridge-shaker.csv --carrier 10MHz --multiplier -1 | --multiplier -1.0: above 0, at most 1000000.0",
        "shaker models/runs/ridge-shaker.csv --carrier 10MHz --multiplier 0 | --multiplier 0.0: above 0",
        "shaker models/runs/ridge-shaker.csv --carrier 10MHz --multiplier NaN | --multiplier NaN: above 0",
        "shaker models/runs/ridge-shaker.csv --carrier 10MHz --multiplier 1e308 | --multiplier 1.0E308: above 0, at most",
        "shaker models/runs/ridge-shaker.csv --carrier 1e300Hz | --carrier 1e300Hz: above 0 Hz, at most 1e15 Hz",
        "shaker --plan MAIN --multiplier -1 | --multiplier -1.0: above 0",
        "tolerance MAIN --units 999999999999 | --units 999999999999: at most 100000000"})
    void an_option_beyond_its_bound_is_named_with_it(String line, String message) {
        refused(message, line);
    }

    @ParameterizedTest
    @ValueSource(strings = {"assess FILE", "simulate MAIN --drive record --record FILE", "sort FILE --limit 1ppb/g",
        "shaker FILE --carrier 10MHz", "fit MAIN FILE --measured path --free cancellation.error.gain", "compare MAIN FILE",
        "springs MAIN --hold --catalogue FILE", "orient MAIN --supports FILE"})
    void a_device_a_pipe_and_a_folder_are_refused_before_they_are_read(String line) throws IOException, InterruptedException {
        assumeTrue(Files.exists(Path.of("/dev/zero")));
        Path pipe = temp.resolve("pipe");
        assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0);
        refused("/dev/zero: is no regular file", line.replace("FILE", "/dev/zero"));
        refused("pipe: is no regular file", line.replace("FILE", pipe.toString()));
        refused(": is a directory", line.replace("FILE", temp.toString()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e-300", "1e300"})
    void readings_that_lead_to_no_weights_are_refused(String size) throws IOException {
        for (String run : new String[] {"off", "on"}) {
            Files.writeString(temp.resolve(run + ".csv"), Files.readString(Path.of("models/runs/trim-" + run + ".csv"))
                .replaceAll("(?m)^(RR-\\d+,[xyz],[\\d.]+),[^,]*,[^,]*,", "$1," + size + ",0,"));
        }
        refused("readings", "filter MAIN --trim " + temp.resolve("off.csv") + " " + temp.resolve("on.csv"));
    }

    @Test
    void doubled_columns_and_broken_quotes_are_told_by_their_line() throws IOException {
        Path file = Files.writeString(temp.resolve("twice.csv"), "time_s,time_s,x_g\n0,0,1\n");
        refused("twice.csv:1: column 'time_s' is there twice", "simulate MAIN --drive record --record " + file);
        Files.writeString(file, "time_s,x_g,x_g\n0,0,1\n");
        refused("twice.csv:1: column 'x_g' is there twice", "simulate MAIN --drive record --record " + file);
        Files.writeString(file, "axis,axis,frequency_hz,peak_g,sideband_dbc\nx,x,1,1,1\n");
        refused("twice.csv:1: axis: column stands twice", "shaker " + file + " --carrier 10MHz");
        Files.writeString(file, "axis,frequency_hz,peak_g,sideband_dbc\nx,100,1,-80\nx,200,1,1e308\n");
        refused("twice.csv:3: sideband_dbc: '1e308' is beyond any instrument", "shaker " + file + " --carrier 10MHz");
        Path quotes = Files.writeString(temp.resolve("quotes.csv"), "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\n\"a\"b,1,2,3\n");
        refused("quotes.csv:2: is not valid CSV: text beside a cell in quotes; check quotes", "sort " + quotes + " --limit 1ppb/g");
        Files.writeString(quotes, "axis,frequency_hz\nx,\"1\n");
        refused("is not valid CSV: a quote is never closed; check quotes", "shaker " + quotes + " --carrier 10MHz");
    }

    @Test
    void a_mark_before_a_comment_is_no_part_of_a_record() throws IOException {
        StringBuilder text = new StringBuilder("\ufeff# a comment\ntime_s,x_g\n");
        for (int i = 0; i < 400; i++) {
            text.append(i / 20000.0).append(',').append(Math.sin(i / 10.0)).append('\n');
        }
        Path file = Files.writeString(temp.resolve("marked.csv"), text);
        assertThat(Run.of("simulate", "models/bolted-down.yaml", "--drive", "record", "--record", file, "--out", temp.resolve("m")).err())
            .doesNotContain("column").doesNotContain("header");
    }

    @Test
    void a_new_model_is_whole_or_not_there_and_never_over_another() throws IOException {
        Path file = temp.resolve("new.yaml");
        assertThat(Run.of("new", file).status()).isZero();
        assertThat(temp).isDirectoryNotContaining("glob:**.part");
        Files.writeString(file, "mine");
        assertThat(Run.of("new", file).err()).contains("exists already and is left as it is");
        assertThat(file).hasContent("mine");
        Run nowhere = Run.of("new", temp.resolve("none/new.yaml"));
        assertThat(nowhere.status()).isEqualTo(2);
        assertThat(nowhere.err()).contains("its folder is not there").doesNotContain("Exception");
    }

    @Test
    void control_characters_of_names_and_titles_do_not_reach_the_terminal() throws IOException {
        Path model = Files.writeString(temp.resolve("title.yaml"), "quietband: 1\ntitle: \"a\\e[2Jb\\u202ec\\rd\"\n"
            + "oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\n");
        Run run = Run.of("assess", model, "--out", temp.resolve("t"));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out() + run.err()).doesNotContain("\u001b").doesNotContain("\u202e").doesNotContain("\r");
        assertThat(Run.of("assess", "no\u001b[2Jne.yaml").err()).contains("no\ufffd[2Jne.yaml").doesNotContain("\u001b");
    }

    @Test
    void a_line_without_end_and_bytes_that_are_no_text_are_told_by_their_line() throws IOException {
        Path endless = Files.writeString(temp.resolve("endless.csv"), "time_s,x_g\n" + "1".repeat(3_000_000));
        refused("endless.csv:2: has more than 1000000 characters in a line", "simulate MAIN --drive record --record " + endless);
        Files.writeString(endless, "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\n" + "1".repeat(3_000_000));
        refused("endless.csv:2: has more than 1000000 characters in a line", "sort " + endless + " --limit 1ppb/g");
        Path bytes = Files.write(temp.resolve("bytes.csv"), "time_s,x_g\n0.1,\u00ff\n".getBytes(StandardCharsets.ISO_8859_1));
        refused("bytes.csv:2: is not UTF-8 text", "simulate MAIN --drive record --record " + bytes);
        refused("bytes.csv:2: is not UTF-8 text", "sort " + bytes + " --limit 1ppb/g");
        refused("bytes.csv:2: is not UTF-8 text", "shaker " + bytes + " --carrier 10MHz");
        refused("bytes.csv:2: is not UTF-8 text", "fit MAIN " + bytes + " --measured path --free cancellation.error.gain");
        refused("bytes.csv:2: is not UTF-8 text", "compare MAIN " + bytes);
        refused("bytes.csv:2: is not UTF-8 text", "assess " + bytes);
    }
}
