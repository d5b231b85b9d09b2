package quietband.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/** One run of the program inside the test's process. */
public record Run(int status, String out, String err) {

    /** Runs a command line. */
    public static Run of(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            words[i] = args[i].toString();
        }
        int status = Quietband.run(new PrintWriter(out), new PrintWriter(err), words);
        return new Run(status, out.toString(), err.toString());
    }
}
