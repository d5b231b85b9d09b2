package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command shaker as a person calls it. */
class ShakerCommandTest {

    @TempDir
    private Path folder;

    private Path file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return file;
    }

    private Run shaker(Path run, Object... more) {
        Object[] args = new Object[more.length + 4];
        args[0] = "shaker";
        args[1] = run;
        args[2] = "--out";
        args[3] = folder.resolve("out");
        System.arraycopy(more, 0, args, 4, more.length);
        return Run.of(args);
    }

    @Test
    void sidebands_in_peak_and_in_rms_come_to_the_same_vector() throws IOException {
        // 3, 4, 12 ppb/g at 10 MHz, 100 Hz, 1 g peak: an index of 3e-4, 4e-4, 12e-4; 20 log10 of half of it
        Path peak = file("peak.csv", "axis,frequency_hz,peak_g,sideband_dbc\nx,100,1,-76.478174819\ny,100,1,-73.979400087\n"
            + "z,100,1,-64.436974992\n");
        Run run = shaker(peak, "--carrier", "10 MHz", "--format", "json");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("\"vector_ppb_per_g\" : 13.00000000");
        Path rms = file("rms.csv", "axis,frequency_hz,rms_g,sideband_dbc\nx,100,0.70710678119,-76.478174819\n"
            + "y,100,0.70710678119,-73.979400087\nz,100,0.70710678119,-64.436974992\n");
        assertThat(shaker(rms, "--carrier", "10 MHz", "--format", "json").out()).contains("\"vector_ppb_per_g\" : 13.00000000");
        assertThat(folder.resolve("out")).isDirectoryContaining("glob:**/{sensitivity.csv,summary.json,report.html,lot.csv}");
    }

    @Test
    void turn_over_readings_give_a_signed_sensitivity() throws IOException {
        Path run = file("turned.csv", "axis,sense,output_hz\nx,up,9999999.99\nx,down,10000000.01\n");
        Run done = shaker(run, "--carrier", "10 MHz", "--format", "json");
        assertThat(done.out()).contains("\"mean_ppb_per_g\" : -1").contains("\"sign_known\" : true");
    }

    @Test
    void every_problem_of_a_file_is_told_with_its_line() throws IOException {
        Path run = file("bad.csv", "axis,frequency_hz,peak_g,rms_g,sideband_dbc\nx,100,1,1,-80\nw,100,1,,-80\ny,0,1,,-80\nz,100,,,loud\n");
        Run done = shaker(run, "--carrier", "10 MHz");
        assertThat(done.status()).isEqualTo(2);
        assertThat(done.err()).contains("bad.csv:2", "3.01 dB", "bad.csv:3", "'w'", "bad.csv:4", "frequency_hz", "bad.csv:5", "loud")
            .doesNotContain("\tat ");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void a_missing_carrier_is_asked_for() throws IOException {
        Run done = shaker(file("run.csv", "axis,sense,output_hz\nx,up,1e7\n"));
        assertThat(done.status()).isEqualTo(2);
        assertThat(done.err()).contains("--carrier", "10 MHz");
    }
}
