package quietband.cli;

import java.nio.file.Path;
import java.util.List;
import quietband.report.file.ResultDirectory;
import quietband.report.file.ResultMark;

/** A program that replaces a result over and over, so that whoever stops it meets the exchange. */
public final class CommitLoop {

    private CommitLoop() { }

    /** Writes to the folder named first until it is stopped; with a number behind it, so many times, with 0 only what a run begins with. */
    public static void main(String... args) {
        Path target = Path.of(args[0]);
        long times = args.length > 1 ? Long.parseLong(args[1]) : Long.MAX_VALUE;
        ResultMark mark = new ResultMark("loop", "1", "abc", 1);
        ResultDirectory.prepare(target, mark, List.of()).close();
        for (long k = 0; k < times; k++) {
            String text = ProcessHandle.current().pid() + "-" + k;
            try (ResultDirectory d = ResultDirectory.prepare(target, mark, List.of())) {
                for (int i = 0; i < 4; i++) {
                    d.write("f" + i + ".csv", w -> w.write(text));
                }
                d.commit();
            }
        }
    }
}
