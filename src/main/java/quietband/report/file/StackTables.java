package quietband.report.file;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import quietband.model.Stack;

/** Columns and rows that several results have of the stacks. */
public final class StackTables {

    /** Columns of {@code coverage.csv}. */
    public static final List<String> COVERAGE = List.of("stack", "from_hz", "to_hz");

    private StackTables() { }

    /** Frequency, then the residual of some things on each axis and as a vector. */
    public static List<String> responseColumns(List<Stack> stacks) {
        return responseColumns(stacks.stream().map(Stack::key));
    }

    /** The same of things by their names. */
    public static List<String> responseColumns(Stream<String> names) {
        return Stream.concat(Stream.of("frequency_hz"), names.flatMap(name -> Stream.of("x", "y", "z", "vector")
            .map(of -> name + "_" + of + "_ppb_per_g"))).toList();
    }

    /** Where a stack stays within the limit. */
    public static void coverage(CsvWriter table, Stack stack, List<double[]> intervals) throws IOException {
        for (double[] i : intervals) {
            table.cell(stack.key()).cell(i[0]).cell(i[1]).end();
        }
    }
}
