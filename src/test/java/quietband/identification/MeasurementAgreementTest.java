package quietband.identification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.identification.MeasurementAgreement.Point;
import quietband.identification.MeasurementAgreement.Stretch;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.text.ModelException;
import quietband.response.Models;

/** A measured response beside a prediction: deviations in dB and degrees, what is beyond its uncertainty, unusable files. */
class MeasurementAgreementTest {

    @TempDir
    Path directory;

    private MeasuredResponse read(String text) throws IOException {
        return MeasuredResponse.read(Files.writeString(directory.resolve("m.csv"), text));
    }

    // one axis of four springs: |A| in closed form; the first reading is it, the second 6.02 dB above with 40 %, the third too small
    @Test
    void deviations_are_told_in_decibels_and_stretches_of_them_found() throws IOException {
        Design d = Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm, damping: 3 N*s/m", ""));
        double[] f = {30, 98, 150, 400};
        double[] ratio = new double[4];
        for (int i = 0; i < 4; i++) {
            double w = 2 * Math.PI * f[i];
            ratio[i] = Math.hypot(80e3, 12 * w) / Math.hypot(80e3 - 0.21 * w * w, 12 * w);
        }
        StringBuilder text = new StringBuilder("frequency_hz,x_ratio,x_relative_error,z_db\n");
        double[] factor = {1.0499, 2, 0.5, 1};
        double[] error = {0.05, 0.4, 0.4, 0.01};
        for (int i = 0; i < 4; i++) {
            text.append(f[i]).append(',').append(factor[i] * ratio[i]).append(',').append(error[i]).append(',')
                .append(20 * Math.log10(ratio[i])).append('\n');
        }
        MeasuredResponse measured = read(text.toString());
        assertThat(measured.kind()).isEqualTo(MeasuredResponse.Kind.TRANSMISSIBILITY);
        List<Point> points = MeasurementAgreement.points(d, Stack.ISOLATED, measured);
        assertThat(points).hasSize(8);
        for (int i = 0; i < 4; i++) {
            assertThat(points.get(i).predicted()).isCloseTo(ratio[i], within(1e-9 * ratio[i]));
            assertThat(points.get(i).deviationDb()).isCloseTo(20 * Math.log10(factor[i]), within(1e-9));
            assertThat(points.get(4 + i).deviationDb()).isCloseTo(0, within(1e-9));
        }
        // 4.99 % with 5 % is within; 100 % and -50 % of the prediction: of what was measured 50 % and 100 %, beyond 40 %
        assertThat(points).extracting(Point::off).startsWith(false, true, true, false);
        List<Stretch> stretches = MeasurementAgreement.stretches(points);
        assertThat(stretches).hasSize(1);
        assertThat(stretches.get(0).axis()).isEqualTo(Axis.X);
        assertThat(stretches.get(0).fromHz()).isEqualTo(98);
        assertThat(stretches.get(0).toHz()).isEqualTo(150);
        assertThat(Math.abs(stretches.get(0).worstDb())).isCloseTo(6.0206, within(1e-4));
    }

    // sensitivities in ppb/g; a phase is off by more than the angle whose sine is the uncertainty: asin 0.1 = 5.74 degrees
    @ParameterizedTest
    @CsvSource({"5.5, false", "6, true", "-5.9, true", "365.5, false"})
    void a_phase_counts_as_the_angle_of_its_uncertainty(double degrees, boolean off) throws IOException {
        Design d = Models.of("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 0.7 ppb/g}}}\n");
        MeasuredResponse measured = read("frequency_hz,x_ppb_per_g,x_phase_deg,x_relative_error\n50,0.72," + degrees + ",0.1\n");
        assertThat(measured.kind()).isEqualTo(MeasuredResponse.Kind.SENSITIVITY);
        Point p = MeasurementAgreement.points(d, Stack.BARE, measured).get(0);
        assertThat(p.measured()).isCloseTo(0.72e-9, within(1e-21));
        assertThat(Math.toDegrees(p.phase())).isCloseTo(degrees > 180 ? degrees - 360 : degrees, within(1e-9));
        assertThat(p.off()).isEqualTo(off);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "frequency_hz\\n10 | no axis is measured; one of x_ppb_per_g, x_ratio, x_db is due for each axis",
        "frequency_hz,x_db,x_ratio\\n10,0,1 | an axis is there in two units",
        "frequency_hz,x_db,y_ppb_per_g\\n10,0,1 | different units are mixed",
        "frequency_hz,x_db | no row below the header; at least one frequency is due",
        "frequency_hz,x_db\\n10,0\\n10,1 | m.csv:3: frequency_hz: '10' does not rise; sort the rows from above 0 Hz",
        "frequency_hz,x_ratio\\n10,-1 | m.csv:2: x_ratio: '-1' is below 0; write the magnitude here and 180 degrees more of phase",
        "frequency_hz,x_ratio,x_relative_error\\n10,1,-0.1 | an uncertainty is at least 0; 0.05 is 5 %",
        "frequency_hz,x_ratios\\n10,1 | unknown column; did you mean 'x_ratio'?"})
    void a_measurement_that_cannot_be_used_is_refused_with_line_and_advice(String text, String said) {
        assertThatThrownBy(() -> read(text.replace("\\n", "\n"))).isInstanceOf(ModelException.class).hasMessageContaining(said);
    }

    private FitException refused(String head, String row, int rows) throws IOException {
        StringBuilder text = new StringBuilder(head).append('\n');
        for (int k = 0; k < rows; k++) {
            text.append(k * 1e-3).append(',').append(Math.sin(k)).append(',').append(Math.cos(k)).append('\n');
        }
        Path file = Files.writeString(directory.resolve("r.csv"), text.append(row));
        return org.assertj.core.api.Assertions.catchThrowableOfType(FitException.class, () -> TimeRecord.read(file));
    }

    @Test
    void a_record_over_time_that_cannot_serve_is_refused_with_its_line() throws IOException {
        String head = "time_s,drive_g,response_g";
        assertThat(refused(head, "", 200)).hasMessage("r.csv: has 200 samples; at least 256 are due to see a response");
        assertThat(refused(head, "9,1\n", 300)).hasMessage("r.csv:302: not 3 cells as in the header; complete the row");
        assertThat(refused(head, "9,1,x\n", 300)).hasMessageContaining("r.csv:302: 'x' is no number; write a plain number");
        assertThat(refused(head, "9,1,NaN\n", 300)).hasMessageContaining("r.csv:302: 'NaN' is not finite");
        assertThat(refused(head, "0.1,1,1\n", 300)).hasMessageContaining("r.csv:302: time_s 0.1 does not rise; sort the rows");
        assertThat(refused("time_s,drive_g,respons_g", "", 300)).hasMessageContaining("r.csv:1: column 'respons_g' is unknown");
        assertThat(refused("time_s,drive_g,drive_g", "", 300)).hasMessageContaining("column 'drive_g' is there twice");
        assertThat(refused("time_s,drive_g", "", 300)).hasMessageContaining("column response_g is missing");
    }
}
