package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command sort as a person calls it. */
class SortCommandTest {

    private static final String HEAD = "serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g\n";

    @TempDir
    private Path folder;

    private Path file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return file;
    }

    private List<String> sorted() throws IOException {
        return Files.readAllLines(folder.resolve("out/sorted.csv"));
    }

    @Test
    void a_reading_on_the_edge_is_within_and_the_rest_is_counted() throws IOException {
        // vectors 0.3 (on the edge), 0.26, 0.51 ppb/g; worst axes 0.3, 0.24, 0.5
        Path lot = file("lot.csv", HEAD + "A,0.3,0,0\nB,0.1,0,0.24\nC,0.1,0.5,0\n");
        Run run = Run.of("sort", lot, "--limit", "0.3 ppb/g", "--out", folder.resolve("out"), "--format", "json");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("\"count\" : 3", "\"accepted\" : 2", "\"estimate\" : 0.666666666667");
        assertThat(sorted()).hasSize(4);
        assertThat(Files.readAllLines(folder.resolve("out/accepted.csv"))).hasSize(3).element(1).asString().startsWith("A,0.3");
    }

    @Test
    void accepted_units_are_a_lot_that_tolerance_reads() throws IOException {
        Run run = Run.of("sort", "models/lots/ridge-lot.csv", "--limit", "0.65 ppb/g", "--out", folder.resolve("out"));
        assertThat(run.status()).as(run.err()).isZero();
        Path model = file("model.yaml", "quietband: 1\noscillator:\n  carrier: 10 MHz\n  resonator:\n    "
            + "sensitivity: {x: 0.3 ppb/g, y: 0 ppb/g, z: 0 ppb/g}\nrequirement:\n  residual: [{frequency: 10 Hz, limit: 1 ppb/g}]\n"
            + "tolerances:\n  - {name: crystal, of: oscillator.resonator.sensitivity, lot: out/accepted.csv}\n");
        Run judged = Run.of("tolerance", model, "--units", "200", "--points", "20", "--out", folder.resolve("t"), "--format", "json");
        assertThat(judged.status()).as(judged.err()).isZero();
        assertThat(judged.out()).contains("\"units\" : 200");
    }

    @Test
    void bad_rows_are_listed_with_their_lines_and_stop_the_sorting_unless_chosen_otherwise() throws IOException {
        Path lot = file("lot.csv", HEAD + "# measured on a Monday\nA,0.1,0.1,0.1\nB,text,0.1,0.1\nC,0.1,NaN,0.1\nA,0.2,0.1,0.1\nD,0.1,0.1\n"
            + "E,0.1,,0.1\n");
        Run stopped = Run.of("sort", lot, "--limit", "0.3 ppb/g", "--out", folder.resolve("out"));
        assertThat(stopped.status()).isEqualTo(2);
        assertThat(stopped.err()).contains("lot.csv:4", "'text'", "lot.csv:5", "'NaN'", "lot.csv:6", "'A' stands in line 3", "lot.csv:7",
            "3 cells", "lot.csv:8", "y_ppb_per_g has no number");
        assertThat(folder.resolve("out")).doesNotExist();

        Run refused = Run.of("sort", lot, "--limit", "0.3 ppb/g", "--out", folder.resolve("out"), "--bad-rows", "refuse",
            "--format", "json");
        assertThat(refused.status()).isZero();
        assertThat(refused.err()).contains("lot.csv:5");
        assertThat(refused.out()).contains("\"count\" : 6", "\"accepted\" : 1", "\"bad_rows\" : 5");
        assertThat(sorted()).hasSize(7).anyMatch(l -> l.startsWith("D,") && l.contains("refused"));

        Run kept = Run.of("sort", lot, "--limit", "0.3 ppb/g", "--out", folder.resolve("out"), "--bad-rows", "keep", "--format", "json");
        assertThat(kept.out()).contains("\"count\" : 2", "\"accepted\" : 2", "\"bad_rows\" : 5");
        assertThat(sorted()).hasSize(7).anyMatch(l -> l.startsWith("C,") && l.contains("unjudged"))
            .anyMatch(l -> l.startsWith("A,0.2") && l.contains("stands in line 3"));
        assertThat(Files.readAllLines(folder.resolve("out/bad_rows.csv"))).hasSize(6);
    }

    @Test
    void options_that_make_no_sense_are_told() throws IOException {
        Path lot = file("lot.csv", HEAD + "A,0.1,0.1,0.1\n");
        for (String[] wrong : new String[][] {{"--limit", "0.3 ppb"}, {"--limit", "0.3 ppb/g", "--bins", "0.3 ppb/g, 0.2 ppb/g"},
            {"--limit", "0.3 ppb/g", "--risk", "5 %"}, {"--limit", "0.3 ppb/g", "--guard", "0.4 ppb/g"}}) {
            Object[] args = new Object[wrong.length + 2];
            args[0] = "sort";
            args[1] = lot;
            System.arraycopy(wrong, 0, args, 2, wrong.length);
            Run run = Run.of(args);
            assertThat(run.status()).isEqualTo(2);
            assertThat(run.err()).contains(wrong[wrong.length - 2]).doesNotContain("\tat ");
        }
    }

    @Test
    void results_do_not_depend_on_threads() throws IOException {
        Path lot = folder.resolve("many.csv");
        var normal = ZigguratSampler.NormalizedGaussian.of(RandomSource.XO_RO_SHI_RO_128_PP.create(11));
        try (BufferedWriter w = Files.newBufferedWriter(lot)) {
            w.write(HEAD);
            for (int i = 0; i < 3000; i++) {
                w.write("S" + i + "," + normal.sample() + "," + normal.sample() + "," + normal.sample() + "\n");
            }
        }
        String[] found = new String[2];
        for (int threads = 1; threads <= 2; threads++) {
            Path out = folder.resolve("out");
            Run.of("sort", lot, "--limit", "0.7 ppb/g", "--uncertainty", "0.1 ppb/g", "--threads", threads, "--out", out);
            found[threads - 1] = Files.readString(out.resolve("summary.json")) + Files.readString(out.resolve("sorted.csv"));
        }
        assertThat(found[0]).isEqualTo(found[1]);
    }
}
