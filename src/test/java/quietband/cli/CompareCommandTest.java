package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.response.ResidualResponse;
import quietband.spectrum.LogGrid;

/** The command compare as a person calls it. */
class CompareCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Quietband.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    @Test
    void two_models_are_told_apart_within_eighty_columns() {
        int status = run("compare", "models/trial-a.yaml", "models/trial-a-cured.yaml", "--out", folder.resolve("c").toString());
        assertThat(status).as(err.toString()).isZero();
        assertThat(out.toString()).contains("platform.springs.corners.damping.x", "-11.08 dB", "Prediction from a model");
        assertThat(out.toString().lines()).allMatch(line -> line.length() <= 80);
        assertThat(folder.resolve("c")).isDirectoryContaining("glob:**/{compare.csv,report.html,summary.json,chart-residual-x.svg}");
    }

    /** A measurement that is the prediction but for z between 100 Hz and 1 kHz, which is twice its uncertainty off. */
    private Path measured(String sign) throws IOException {
        ResidualResponse response = new ResidualResponse(ModelFile.read(Path.of("models/ridge-relay.yaml")).design());
        StringBuilder csv = new StringBuilder("frequency_hz,x_ppb_per_g,x_relative_error,z_ppb_per_g,z_relative_error\n");
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : LogGrid.between(120, 10, 2000)) {
            response.at(f);
            response.residual(Stack.COMBINED, re, im);
            double off = f >= 100 && f <= 1000 ? 1 + Integer.parseInt(sign + "2") * 0.1 : 1;
            csv.append(String.format(Locale.ROOT, "%.10e,%.10e,0.1,%.10e,0.1%n", f, Math.hypot(re[0], im[0]) * 1e9,
                Math.hypot(re[2], im[2]) * 1e9 * off));
        }
        Path file = folder.resolve("measured.csv");
        Files.writeString(file, csv);
        return file;
    }

    @Test
    void a_measurement_off_by_twice_its_uncertainty_in_one_decade_is_flagged_there_and_nowhere_else() throws IOException {
        for (String sign : new String[] {"+", "-"}) {
            out.getBuffer().setLength(0);
            int status = run("compare", "models/ridge-relay.yaml", measured(sign).toString(), "--out", folder.resolve("m").toString());
            assertThat(status).as(err.toString()).isZero();
            assertThat(Files.readAllLines(folder.resolve("m/compare.csv")).stream().skip(1)).allSatisfy(line -> {
                String[] cells = line.split(",");
                double f = Double.parseDouble(cells[0]);
                boolean expected = cells[1].equals("z") && f >= 100 && f <= 1000;
                assertThat(cells[7]).as(line).isEqualTo(expected ? "yes" : "no");
            });
            assertThat(out.toString()).contains("axis z").doesNotContain("axis x");
        }
    }

    @Test
    void a_measured_file_with_a_wrong_column_is_refused_with_its_name() throws IOException {
        Path file = folder.resolve("bad.csv");
        Files.writeString(file, "frequency_hz,x_ppb\n10,1\n");
        assertThat(run("compare", "models/ridge-relay.yaml", file.toString(), "--out", folder.resolve("b").toString())).isEqualTo(2);
        assertThat(err.toString()).contains("bad.csv", "x_ppb").doesNotContain("\tat ");
    }
}
