package quietband.model.compile;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import quietband.model.DigitalFilter;
import quietband.model.format.WrittenValue;

/** The digital filter of each axis from the path's keys: a file that was read, or inline taps and sections. */
final class DigitalFilters {

    private DigitalFilters() { }

    static List<DigitalFilter> of(WrittenValue path) {
        if (path.get("filter").value() instanceof FilterFile file) {
            return file.filters();
        }
        double[][][] taps = path.get("taps").value() instanceof double[][][] rows ? rows : new double[3][0][];
        double[][][] sections = path.get("sections").value() instanceof double[][][] rows ? rows : new double[3][0][];
        if (!path.get("taps").given() && !path.get("sections").given()) {
            return Collections.nCopies(3, DigitalFilter.NONE);
        }
        return IntStream.range(0, 3).mapToObj(axis -> new DigitalFilter(
            IntStream.range(0, taps[axis].length).toArray(),
            Arrays.stream(taps[axis]).mapToDouble(row -> row[0]).toArray(), sections[axis])).toList();
    }
}
