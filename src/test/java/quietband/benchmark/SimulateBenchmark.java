package quietband.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.motion.signal.SteppingWork;

/**
 * Simulated seconds per second, one thread: noise on three axes, all four stacks of the main model, stepping alone. An operation
 * is a simulated second, so that the score is the factor over real time.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
public class SimulateBenchmark {

    private static final int SECONDS = 60;
    private static final int FEWER = 10;

    private SteppingWork plain;
    private SteppingWork waves;
    private SteppingWork digital;

    /** The main model, the main model with a 20 kHz path, and the same on springs without mass and loss factor. */
    @Setup
    public void prepare() throws IOException {
        Path path = Path.of("models", "ridge-relay.yaml");
        String text = Files.readString(path);
        String slow = text.replace("sample_rate: 100 kHz", "sample_rate: 20 kHz").replace("phase: -0.5 deg, ", "");
        String bare = slow.replaceAll("(?m)^\\s+mass: 0\\.6 g.*$", "").replaceAll("(?m)^\\s+loss_factor: 28 %.*$", "");
        plain = new SteppingWork(design(path, bare), true, 20e3, SECONDS);
        waves = new SteppingWork(design(path, slow), true, 20e3, SECONDS);
        digital = new SteppingWork(design(path, text), false, 100e3, FEWER);
    }

    private static Design design(Path path, String text) {
        return ModelFile.parse(path, text).design();
    }

    /** Linear, 20 kHz: 12 states of the platform. */
    @Benchmark
    @OperationsPerInvocation(SECONDS)
    public double linearPlain() {
        return plain.run();
    }

    /** Linear, 20 kHz, with the waves of the springs and dampers for their loss factor: 66 states of the platform. */
    @Benchmark
    @OperationsPerInvocation(SECONDS)
    public double linearWithWaves() {
        return waves.run();
    }

    /** The main model as shipped: 100 kHz digital path, constant phase, all nonlinear parts. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double nonlinearDigital() {
        return digital.run();
    }
}
