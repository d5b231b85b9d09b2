package quietband.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import quietband.cli.command.AssessCommand;
import quietband.cli.command.CompareCommand;
import quietband.cli.command.FilterCommand;
import quietband.cli.command.FitCommand;
import quietband.cli.command.NewCommand;
import quietband.cli.command.OrientCommand;
import quietband.cli.command.SchemaCommand;
import quietband.cli.command.ShakerCommand;
import quietband.cli.command.SimulateCommand;
import quietband.cli.command.SortCommand;
import quietband.cli.command.SpringsCommand;
import quietband.cli.command.ToleranceCommand;
import quietband.cli.command.TradeCommand;
import quietband.cli.command.WindowCommand;
import quietband.cli.terminal.FailureMessage;
import quietband.cli.terminal.Version;
import quietband.cli.terminal.VisibleText;

/** The program: names its commands, turns what went wrong into one message and an exit status. */
@Command(name = "quietband", mixinStandardHelpOptions = true, versionProvider = Version.class,
    description = "Residual acceleration sensitivity and phase noise of a quartz oscillator on springs with a feed-forward "
        + "cancellation, from 10 Hz to 2 kHz on three axes.",
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {AssessCommand.class, SimulateCommand.class, ToleranceCommand.class, CompareCommand.class, SpringsCommand.class,
        FilterCommand.class, OrientCommand.class, TradeCommand.class, ShakerCommand.class, SortCommand.class, FitCommand.class,
        WindowCommand.class, SchemaCommand.class, NewCommand.class},
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {" 0:done", " 1:with --check: done, but a requirement is not met", " 2:input error: correct it and run again",
        "70:a defect of this program", "130:stopped by Ctrl-C (143: by the system); an old result stays as it was"})
public final class Quietband implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "Name a command: "
            + String.join(", ", spec.subcommands().keySet()));
    }

    /** Runs a command line and ends the process with its status. */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        // numbers look the same wherever the program runs
        Locale.setDefault(Locale.Category.FORMAT, Locale.ROOT);
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> System.exit(FailureMessage.lastResort(e, err)));
        int status = run(out, err, args);
        if (out.checkError() && status < FailureMessage.INPUT_ERROR) {
            err.println("quietband: standard output cannot be written (closed, or its disk is full)");
            status = FailureMessage.INPUT_ERROR;
        }
        err.flush();
        System.exit(status);
    }

    /** Runs a command line with given streams; returns the exit status. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = new CommandLine(new Quietband());
        for (CommandLine command : line.getSubcommands().values()) {
            command.getCommandSpec().versionProvider(new Version());
        }
        PrintWriter errors = new PrintWriter(new VisibleText(err), true);
        line.setOut(new PrintWriter(new VisibleText(out))).setErr(errors).setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF))
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler(FailureMessage::misused)
            .setExecutionExceptionHandler(FailureMessage::failed);
        try {
            return line.execute(args);
        } catch (OutOfMemoryError | StackOverflowError | LinkageError | AssertionError e) {
            return FailureMessage.lastResort(e, errors);
        } finally {
            line.getOut().flush();
            errors.flush();
        }
    }
}
