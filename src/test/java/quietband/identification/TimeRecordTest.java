package quietband.identification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedWriter;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.fit.FitCoverageTest;
import quietband.identification.fit.FitResult;
import quietband.identification.fit.ModelFit;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.spectrum.Fft;

/** Records over time: from samples to values. */
class TimeRecordTest {

    private static final double RATE = 4096;
    private static final List<String> FREE = List.of("platform.springs.corners.stiffness.z", "platform.springs.corners.damping.z");

    @TempDir
    private Path folder;

    /** Hardly damped, 2.4 % of critical, so that the resolution of a spectrum matters. */
    private final ModelFile truth = FitCoverageTest.model(FitCoverageTest.springs(16, 12, 4, 1.2), "{z: -3 mm}");
    private final ModelFile wrong = truth.withNumber(FREE.get(0), 20000).withNumber(FREE.get(1), 4);

    /** White drive of 1 g rms; the response through the design's transmissibility by a long transform; noise of 0.02 g on it. */
    private double[][] record(int samples, long seed) {
        int n = Integer.highestOneBit(samples) < samples ? 2 * Integer.highestOneBit(samples) : samples;
        SplittableRandom random = new SplittableRandom(seed);
        double[] drive = new double[n];
        for (int i = 0; i < n; i++) {
            drive[i] = Synthetic.normal(random);
        }
        double[] re = drive.clone();
        double[] im = new double[n];
        Fft fft = new Fft(n);
        fft.forward(re, im);
        Design design = truth.design();
        PredictedResponse prediction = new PredictedResponse(design, Kind.TRANSMISSIBILITY, Stack.ISOLATED);
        double[] outRe = new double[n];
        double[] outIm = new double[n];
        for (int k = 1; k < n / 2; k++) {
            prediction.at(k * RATE / n);
            double a = prediction.re(2);
            double b = prediction.im(2);
            // conjugated, so that a second forward transform brings it back in time
            outRe[k] = a * re[k] - b * im[k];
            outIm[k] = -(a * im[k] + b * re[k]);
            outRe[n - k] = outRe[k];
            outIm[n - k] = -outIm[k];
        }
        fft.forward(outRe, outIm);
        double[][] both = new double[2][samples];
        for (int i = 0; i < samples; i++) {
            both[0][i] = drive[i];
            both[1][i] = outRe[i] / n + 0.02 * Synthetic.normal(random) + 0.3;
        }
        return both;
    }

    private Path file(double[][] both, double gapAfter) throws IOException {
        Path file = folder.resolve("record.csv");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write("# invented\ntime_s,drive_g,response_g\n");
            StringBuilder row = new StringBuilder();
            for (int i = 0; i < both[0].length; i++) {
                double t = i / RATE;
                row.setLength(0);
                row.append((float) (t > gapAfter ? t + 0.5 : t) == 0 ? 0 : t > gapAfter ? t + 0.5
                    : t).append(',').append((float) both[0][i]).append(',')
                    .append((float) both[1][i]).append('\n');
                out.write(row.toString());
            }
        }
        return file;
    }

    private FitResult fit(Path file) {
        RecordResponse record = RecordResponse.read(file, Axis.Z, 10, 1000);
        return ModelFit.of(wrong, List.of(MeasuredFile.of("record.csv", record, MeasuredFile.Asked.TRANSMISSIBILITY, Stack.ISOLATED)), FREE,
            new ModelFit.Settings(true, false, Optional.empty()));
    }

    @Test
    void stiffness_and_damping_come_out_of_a_record_with_honest_errors() throws IOException {
        double worst = 0;
        double sum = 0;
        for (int seed = 1; seed <= 6; seed++) {
            for (FitResult.Value v : fit(file(record(1 << 16, seed), Double.MAX_VALUE)).values()) {
                double z = (v.value() - truth.design().quantities().valueOf(v.of())) / v.standardError();
                worst = Math.max(worst, Math.abs(z));
                sum += z * z / 12;
            }
        }
        // 12 normal deviates: mean square 1 +- 0.41, the largest beyond 3.7 once in four hundred such sets
        assertThat(worst).isLessThan(3.7);
        assertThat(sum).isBetween(0.2, 2.4);
    }

    @Test
    void a_million_samples_take_less_than_five_seconds_of_processor_time() throws IOException {
        Path file = file(record(1_000_000, 5), 100);
        long start = cpu();
        FitResult fitted = fit(file);
        assertThat((cpu() - start) / 1e9).isLessThan(5);
        for (FitResult.Value v : fitted.values()) {
            double real = truth.design().quantities().valueOf(v.of());
            assertThat(Math.abs(v.value() - real)).as(v.toString()).isLessThan(4 * v.standardError());
            assertThat(v.standardError() / real).isLessThan(0.01);
        }
    }

    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    @Test
    void a_gap_is_told_and_what_is_no_record_is_refused() throws IOException {
        double[][] both = record(1 << 14, 3);
        assertThat(RecordResponse.read(file(both, 2), Axis.Z, 10, 1000).notes()).anyMatch(n -> n.contains("1 gap"));
        assertThatThrownBy(() -> RecordResponse.read(file(record(128, 1), 9), Axis.Z, 10, 1000)).hasMessageContaining("128 samples");
        double[][] flat = {both[0], new double[both[0].length]};
        assertThatThrownBy(() -> RecordResponse.read(file(flat, 9), Axis.Z, 10, 1000)).hasMessageContaining("throughout");
        double[][] strange = {both[0], record(1 << 14, 9)[1]};
        assertThatThrownBy(() -> RecordResponse.read(file(strange, 9), Axis.Z, 10, 1000)).hasMessageContaining("too little in common");
    }
}
