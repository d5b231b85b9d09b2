package quietband.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program: names its commands, turns what went wrong into one message and an exit status. */
@Command(name = "quietband", mixinStandardHelpOptions = true, versionProvider = Version.class,
    description = "Residual acceleration sensitivity and phase noise of a quartz oscillator on springs with a feed-forward "
        + "correction, from 10 Hz to 2 kHz on three axes.",
    synopsisSubcommandLabel = "COMMAND",
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {" 0:done", " 1:with --check: done, but a requirement is not met", " 2:something you can mend",
        "70:a defect of this program"})
public final class Quietband implements Runnable {

    private static final Map<String, Supplier<Object>> COMMANDS = commands();

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
        int status = run(out, err, args);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /** Runs a command line with given streams; returns the exit status. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = new CommandLine(new Quietband());
        addCommands(line, args);
        line.setOut(out).setErr(err)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler(Trouble::misused)
            .setExecutionExceptionHandler(Trouble::failed);
        return line.execute(args);
    }

    /** Only the command that is asked for when it is known, which starts sooner; else all, for help and suggestions. */
    private static void addCommands(CommandLine line, String... args) {
        Supplier<Object> asked = args.length == 0 ? null : COMMANDS.get(args[0]);
        if (asked != null) {
            line.addSubcommand(args[0], asked.get());
            return;
        }
        COMMANDS.forEach((name, command) -> line.addSubcommand(name, command.get()));
    }

    private static Map<String, Supplier<Object>> commands() {
        Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
        commands.put("assess", AssessCommand::new);
        commands.put("simulate", SimulateCommand::new);
        commands.put("tolerance", ToleranceCommand::new);
        commands.put("filter", FilterCommand::new);
        commands.put("compare", CompareCommand::new);
        commands.put("orient", OrientCommand::new);
        commands.put("shaker", ShakerCommand::new);
        commands.put("sort", SortCommand::new);
        commands.put("springs", SpringsCommand::new);
        commands.put("trade", TradeCommand::new);
        commands.put("window", WindowCommand::new);
        commands.put("fit", FitCommand::new);
        commands.put("schema", SchemaCommand::new);
        commands.put("new", NewCommand::new);
        return Collections.unmodifiableMap(commands);
    }
}
