package quietband.model.read;

import java.util.List;
import java.util.Optional;
import quietband.model.compile.FilterFile;
import quietband.model.format.WrittenValue;
import quietband.model.text.CsvTable;
import quietband.model.text.FileProblems;

/** What must hold between the keys of a cancellation. */
final class CancellationChecks {

    private static final double SAME_RATE = 1e-9;

    private final WrittenValue block;
    private final ReferencedFiles references;
    private final FileProblems problems;

    CancellationChecks(WrittenValue cancellation, ReferencedFiles references, FileProblems problems) {
        this.block = cancellation;
        this.references = references;
        this.problems = problems;
    }

    void run() {
        WrittenValue path = block.get("path");
        WrittenValue rate = path.get("sample_rate");
        for (String key : List.of("filter", "taps", "sections", "converter_bits")) {
            if (path.get(key).given() && !rate.given()) {
                problems.add(path.get(key).node(), path.get(key).path(), "needs a sample_rate",
                    "add cancellation.path.sample_rate, e.g. 100 kHz");
            }
        }
        if (path.get("converter_bits").given() && !block.get("sensor").get("range").given()) {
            problems.add(path.get("converter_bits").node(), path.get("converter_bits").path(), "needs the sensor's range",
                "add cancellation.sensor.range, e.g. 20 g");
        }
        WrittenValue filter = path.get("filter");
        for (String key : List.of("taps", "sections")) {
            if (filter.given() && path.get(key).given()) {
                problems.add(path.get(key).node(), path.get(key).path(), "stands beside filter",
                    "keep the file or the inline filter");
            }
        }
        stable(path.get("sections"));
        file(filter, rate);
        odd();
    }

    private void file(WrittenValue filter, WrittenValue rate) {
        Optional<CsvTable> table = references.table(filter);
        if (table.isEmpty()) {
            return;
        }
        if (!references.collect(() -> filter.value(FilterFile.read(table.get())))) {
            filter.spoil();
        } else if (rate.good() && filter.value() instanceof FilterFile read) {
            read.rates().stream().filter(r -> Math.abs(r.rateHz() / rate.number() - 1) > SAME_RATE).findFirst()
                .ifPresent(r -> problems.add(filter.node(), filter.path(), "its rate_hz at line " + r.line()
                    + " is not the sample_rate " + rate.node().text(), "design the filter for the rate it runs at"));
        }
    }

    private void stable(WrittenValue sections) {
        if (!(sections.value() instanceof double[][][] rows)) {
            return;
        }
        for (int axis = 0; axis < 3; axis++) {
            for (int i = 0; i < rows[axis].length; i++) {
                if (!FilterFile.stable(rows[axis][i])) {
                    problems.add(sections.node(), sections.path(), "section " + (i + 1) + " is unstable",
                        "|a2| < 1 and |a1| < 1 + a2 are due");
                }
            }
        }
    }

    private void odd() {
        WrittenValue tuning = block.get("tuning");
        if (!tuning.get("slope").given() && tuning.given()) {
            problems.warn(tuning.node(), tuning.path(), "without a slope noise, range and curvature do nothing",
                "add cancellation.tuning.slope");
        }
    }
}
