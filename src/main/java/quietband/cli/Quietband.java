package quietband.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
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

/** The program: names its commands, turns what went wrong into one message and an exit status. */
@Command(name = Quietband.NAME, mixinStandardHelpOptions = true, versionProvider = Version.class,
    description = "Residual acceleration sensitivity and phase noise of a quartz oscillator on springs with a feed-forward "
        + "correction, from 10 Hz to 2 kHz on three axes.",
    synopsisSubcommandLabel = "COMMAND",
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {" 0:done", " 1:with --check: done, but a requirement is not met", " 2:something you can mend",
        "70:a defect of this program"})
public final class Quietband implements Runnable {

    static final String NAME = "quietband";
    private static final List<String> NAMES = List.of("assess", "simulate", "tolerance", "compare", "springs", "filter", "orient",
        "trade", "shaker", "sort", "fit", "window", "schema", "new");

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "Name a command: "
            + String.join(", ", spec.subcommands().keySet()));
    }

    /** Runs a command line and ends the process with its status. */
    public static void main(String[] args) {
        int again = FastStart.again(new Halt(), args);
        if (again != FastStart.HERE) {
            System.exit(again);
        }
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int status = run(out, err, args);
        out.flush();
        err.flush();
        System.exit(status);
    }

    private static final class Halt implements Runnable {
        @Override
        public void run() {
            Runtime.getRuntime().halt(FailureMessage.DEFECT);
        }
    }

    /** Runs a command line with given streams; returns the exit status. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        Ahead ahead = Ahead.of(args);
        Object asked = args.length == 0 ? null : command(args[0], ahead);
        CommandLine line = asked == null ? all(ahead) : new CommandLine(CommandSpec.create().name(NAME)).addSubcommand(args[0], asked);
        for (CommandLine command : line.getSubcommands().values()) {
            command.getCommandSpec().versionProvider(new Version());
        }
        line.setOut(out).setErr(err)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler(FailureMessage::misused)
            .setExecutionExceptionHandler(FailureMessage::failed);
        return line.execute(args);
    }

    /** Every command, for help and suggestions; the one that is asked for alone starts sooner. */
    private static CommandLine all(Ahead ahead) {
        CommandLine line = new CommandLine(new Quietband());
        NAMES.forEach(name -> line.addSubcommand(name, command(name, ahead)));
        return line;
    }

    /** The object of a command, null for a name that is none; only the command that is asked for is loaded. */
    private static Object command(String name, Ahead ahead) {
        return switch (name) {
            case "assess" -> new AssessCommand(ahead).spec();
            case "simulate" -> new SimulateCommand();
            case "tolerance" -> new ToleranceCommand(ahead);
            case "compare" -> new CompareCommand();
            case "springs" -> new SpringsCommand();
            case "filter" -> new FilterCommand();
            case "orient" -> new OrientCommand();
            case "trade" -> new TradeCommand();
            case "shaker" -> new ShakerCommand();
            case "sort" -> new SortCommand();
            case "fit" -> new FitCommand();
            case "window" -> new WindowCommand();
            case "schema" -> new SchemaCommand();
            case "new" -> new NewCommand();
            default -> null;
        };
    }
}
