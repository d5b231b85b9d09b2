package quietband.benchmark;

import java.awt.AWTException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import quietband.window.EditingWork;

/** From an edit to the painted picture in a real window of 1280 x 800 on the main model; needs a display. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 5, time = 10)
public class WindowBenchmark {

    /** Whether a Monte Carlo runs beside. */
    @Param({"false", "true"})
    public boolean drawing;

    private EditingWork work;

    /** Opens the window. */
    @Setup
    public void open() throws AWTException {
        work = new EditingWork(drawing);
    }

    /** With a Monte Carlo beside, an edit is made while units are being drawn. */
    @Setup(Level.Invocation)
    public void ready() {
        work.ready();
    }

    /** Closes it. */
    @TearDown
    public void close() {
        work.close();
    }

    /** One edit, until its picture is painted. */
    @Benchmark
    public long edit() {
        return work.edit();
    }
}
