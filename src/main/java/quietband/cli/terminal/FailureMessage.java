package quietband.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import quietband.filter.FilterException;
import quietband.identification.FitException;
import quietband.model.text.ModelException;
import quietband.motion.drive.MotionRecordException;
import quietband.motion.signal.NoSteadyStateException;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.SingularPlatformException;
import quietband.report.file.ResultException;
import quietband.tolerance.draw.ToleranceException;

/** What went wrong, as a message for people and an exit status; never a stack trace. */
public final class FailureMessage {

    /** An input error: the user can correct it and run again. */
    public static final int INPUT_ERROR = 2;
    /** A defect. */
    public static final int DEFECT = 70;

    private static final List<Class<? extends RuntimeException>> INPUT_ERRORS =
        List.of(ResultException.class, InputErrorException.class,
        SingularPlatformException.class, ToleranceException.class, ImpossibleRequestException.class, FilterException.class,
        FitException.class, MotionRecordException.class, NoSteadyStateException.class, ArithmeticException.class);

    private FailureMessage() { }

    /** A command line that makes no sense. */
    public static int misused(ParameterException e, String[] args) {
        PrintWriter err = e.getCommandLine().getErr();
        err.println("quietband: " + oneLine(MisuseMessage.of(e, args)));
        err.println("Try 'quietband " + (e.getCommandLine().getParent() == null ? "" : e.getCommandLine().getCommandName()
            + " ") + "--help'.");
        return INPUT_ERROR;
    }

    /** A command that failed. */
    public static int failed(Exception e, CommandLine line, ParseResult parsed) {
        PrintWriter err = line.getErr();
        if (e instanceof ModelException) {
            err.println(e.getMessage());
            return INPUT_ERROR;
        }
        if (INPUT_ERRORS.stream().anyMatch(type -> type.isInstance(e))) {
            err.println("quietband: " + oneLine(e.getMessage()));
            return INPUT_ERROR;
        }
        if (e instanceof IOException || e instanceof UncheckedIOException) {
            err.println("quietband: reading or writing failed: " + oneLine(told(e)));
            return INPUT_ERROR;
        }
        return defect(e, err);
    }

    /** What an error of reading or writing says, without the name of a class. */
    private static String told(Exception e) {
        boolean wrapped = e instanceof UncheckedIOException && e.getCause() != null
            && String.valueOf(e.getMessage()).equals(e.getCause().toString());
        Throwable cause = wrapped ? e.getCause() : e;
        if (cause instanceof NoSuchFileException missing) {
            return missing.getFile() + ": there is no such file";
        }
        return cause instanceof AccessDeniedException denied ? denied.getFile() + ": may not be read or written; check its permissions"
            : cause.getMessage();
    }

    /** What no command foresaw: too little memory, or a defect. */
    public static int lastResort(Throwable e, PrintWriter err) {
        if (e instanceof OutOfMemoryError) {
            err.println("quietband: out of memory (" + Runtime.getRuntime().maxMemory() / (1 << 20) + " MiB are allowed): ask for less "
                + "at once, or allow more with java -Xmx; an old result stays as it was");
            return DEFECT;
        }
        return defect(e, err);
    }

    private static int defect(Throwable e, PrintWriter err) {
        StackTraceElement[] trace = e.getStackTrace();
        err.println("quietband: a defect of this program: " + e.getClass().getSimpleName() + ": " + oneLine(e.getMessage())
            + (trace.length > 0 ? " at " + trace[0] : "") + "; please report it with the model file and this line");
        return DEFECT;
    }

    private static String oneLine(String text) {
        return text == null ? "no message" : text.strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
