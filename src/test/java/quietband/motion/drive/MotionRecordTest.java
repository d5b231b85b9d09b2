package quietband.motion.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.motion.run.Examples;
import quietband.motion.run.PassMonitor;
import quietband.motion.run.VibrationRun;

/** Records, good and bad. */
class MotionRecordTest {

    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("run.csv"), text);
    }

    private Path sampled(int n, double rate, IntToDoubleFunction x) throws IOException {
        StringBuilder text = new StringBuilder("# invented\ntime_s,x_g\n");
        for (int i = 0; i < n; i++) {
            text.append(String.format(Locale.ROOT, "%.9f,%.9f%n", i / rate, x.applyAsDouble(i)));
        }
        return file(text.toString());
    }

    private void refused(String text, String... parts) throws IOException {
        Path path = file(text);
        assertThatThrownBy(() -> MotionRecordFile.read(path, 10)).isInstanceOf(MotionRecordException.class)
            .hasMessageContainingAll("run.csv").hasMessageContainingAll(parts);
    }

    private static String rows(String header, int n, String pattern) {
        StringBuilder text = new StringBuilder(header + "\n");
        for (int i = 0; i < n; i++) {
            text.append(String.format(Locale.ROOT, pattern + "%n", i * 1e-3, Math.sin(i)));
        }
        return text.toString();
    }

    @Test
    void bad_records_get_a_clear_answer() throws IOException {
        refused("", "is empty");
        refused("time_s,x_g\n0,1\n", "has 1 sample", "at least 8");
        refused(rows("time_s,x_g", 20, "%.4f,%.4f") + "0.02,NaN\n", ":22", "x_g is 'NaN'");
        refused(rows("time_s,x_g", 20, "%.4f,%.4f") + "0.02,abc\n", ":22", "'abc', not a number");
        refused(rows("time_s,x_g", 20, "%.4f,%.4f") + "0.5,1\n", "a gap of 0.481", "cut the record");
        refused(rows("time_s,x_g", 20, "%.4f,%.4f") + "0.003,1\n", ":22", "does not rise", "swapped");
        refused(rows("x_g,time_s", 20, "%.4f,%.4f"), "does not rise");
        refused(rows("time_s,x_m_s2", 20, "%.4f,%.4f"), ":1", "column 'x_m_s2' is unknown", "acceleration in g");
        refused(rows("time_s,z_g", 20, "%.4f,9.81"), "gravity in m/s^2", "divide");
        refused("time_s,x_g\n" + rows("", 20, "%.4f,%.4f").strip().replaceAll("(?m)^0\\.0(\\d+),", "$1,"), "samples per second", "in ms");
        assertThatThrownBy(() -> MotionRecordFile.read(folder.resolve("none.csv"), 10)).hasMessageContaining("no such file");
    }

    @Test
    void a_million_rows_are_read() throws IOException {
        StringBuilder text = new StringBuilder("time_s,y_g\n");
        for (int i = 0; i < 1_000_000; i++) {
            text.append(i).append("e-4,").append(i % 7 - 3).append('\n');
        }
        assertThat(MotionRecordFile.read(file(text.toString()), 10).duration()).isCloseTo(99.9999,
            org.assertj.core.data.Offset.offset(1e-9));
    }

    @Test
    void mean_and_drift_are_taken_out_and_said() throws IOException {
        MotionRecord r = MotionRecordFile.read(sampled(2000, 1000, i -> 0.5 + 1e-3 * i + Math.sin(0.3 * i)), 10);
        assertThat(r.notes()).anyMatch(n -> n.contains("mean of 1.5")).anyMatch(n -> n.contains("drift of 1.999"));
        assertThat(r.value()[0][1000]).isCloseTo(Math.sin(300), org.assertj.core.data.Offset.offset(0.01));
    }

    @Test
    void a_recorded_sine_moves_the_stacks_as_the_frequency_domain_says() throws IOException {
        Design d = Examples.shipped("ridge-relay.yaml");
        MotionRecord r = MotionRecordFile.read(sampled(4000, 4000, i -> Math.sin(2 * Math.PI * 200 * i / 4000.0)), 10);
        VibrationRun.Result ride = VibrationRun.recorded(d, r, new VibrationRun.Options(true, 0, false, 10, 0), PassMonitor.NONE);
        double[][] y = Examples.predicted(d, quietband.model.Axis.X, 200);
        // rms over 1 s, its start-up of some 30 ms included
        assertThat(ride.rms()[ride.stacks().indexOf(Stack.BARE)] * Math.sqrt(2)).isCloseTo(Math.hypot(y[0][0], y[0][1]),
            org.assertj.core.data.Percentage.withPercentage(0.5));
        assertThat(ride.rms()[ride.stacks().indexOf(Stack.ISOLATED)] * Math.sqrt(2)).isCloseTo(Math.hypot(y[1][0], y[1][1]),
            org.assertj.core.data.Percentage.withPercentage(15));
        assertThat(ride.axis()).isEqualTo("x");
    }
}
