package quietband.identification.trim;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.ResidualResponse;

/** Shaker runs as a unit with known errors would give them, by the frequency domain itself. */
record ShakenUnit(Design design, double[] frequencyHz) {

    /** A source of normal noise; zero for a seed below 0. */
    static DoubleSupplier noise(long seed) {
        if (seed < 0) {
            return () -> 0;
        }
        UniformRandomProvider random = RandomSource.PHILOX_4X64.create(new long[] {seed, 0, 0, 0, 0, 0});
        return ZigguratSampler.NormalizedGaussian.of(random)::sample;
    }

    /** Readings of a stack with relative noise on each part; {@code stated} says whether the file tells it. */
    Map<Axis, List<TrimRun.Reading>> run(Stack stack, double relative, boolean stated, DoubleSupplier normal) {
        ResidualResponse response = new ResidualResponse(design);
        Map<Axis, List<TrimRun.Reading>> run = new EnumMap<>(Axis.class);
        double[] re = new double[3];
        double[] im = new double[3];
        for (double f : frequencyHz) {
            response.at(f);
            response.residual(stack, re, im);
            for (Axis axis : Axis.ALL) {
                int j = axis.ordinal();
                double sigma = relative * Math.hypot(re[j], im[j]);
                run.computeIfAbsent(axis, a -> new ArrayList<>()).add(new TrimRun.Reading(0, f, re[j] + sigma * normal.getAsDouble(),
                    im[j] + sigma * normal.getAsDouble(), stated ? Math.max(relative, 1e-6) : Double.NaN, Double.NaN));
            }
        }
        return run;
    }

    /** A run as the file's text. */
    static String csv(Map<Axis, List<TrimRun.Reading>> run, String serial) {
        StringBuilder text = new StringBuilder();
        run.forEach((axis, rows) -> rows.forEach(r -> text.append(serial.isEmpty() ? "" : serial + ",").append(axis.letter()).append(',')
            .append(r.frequencyHz()).append(',').append(1e9 * r.size()).append(',')
            .append(Math.toDegrees(Math.atan2(r.im(), r.re()))).append(',').append(r.relativeError()).append('\n')));
        return text.toString();
    }
}
