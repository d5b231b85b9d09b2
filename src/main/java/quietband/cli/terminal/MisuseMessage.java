package quietband.cli.terminal;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;
import quietband.model.text.SpellingSuggestion;

/** What is wrong with a command line, in the words a person types. */
final class MisuseMessage {

    private static final Map<String, String> FORMER_OPTIONS = Map.of("--top", "--max-level", "--want", "--good-units", "--grid",
        "--time-rate", "--corner", "--natural-frequency");

    private MisuseMessage() { }

    /** The message; a misspelt option goes before what is missing, since it may be just that. */
    static String of(ParameterException e, String... args) {
        CommandSpec command = e.getCommandLine().getCommandSpec();
        if (e.getCause() instanceof TypeConversionException && e.getArgSpec() instanceof OptionSpec option) {
            return option.longestName() + ": '" + e.getValue() + "' is " + mismatch(option, e.getValue());
        }
        if (!(e instanceof MissingParameterException || e instanceof UnmatchedArgumentException)) {
            return e.getMessage();
        }
        Set<String> options = command.optionsMap().keySet();
        List<String> unknown = Arrays.stream(args).takeWhile(a -> !a.equals("--")).filter(a -> a.matches("--?[a-zA-Z].*"))
            .map(a -> a.replaceFirst("=.*", "")).filter(a -> !options.contains(a)).toList();
        if (!unknown.isEmpty()) {
            String now = FORMER_OPTIONS.get(unknown.get(0));
            return now != null && options.contains(now) ? unknown.get(0) + ": unknown option; it is called " + now + " now"
                : advised("unknown option '" + unknown.get(0) + "'", SpellingSuggestion.advice(unknown.get(0), options, ""));
        }
        if (!(e instanceof UnmatchedArgumentException unmatched)) {
            return e.getMessage();
        }
        String first = unmatched.getUnmatched().get(0);
        Set<String> commands = command.subcommands().keySet();
        return commands.isEmpty() ? "'" + first + "' is one argument too many"
            : advised("unknown command '" + first + "'", SpellingSuggestion.advice(first, commands, "name one of "
                + String.join(", ", commands)));
    }

    private static String advised(String what, String advice) {
        return advice.isEmpty() ? what : what + "; " + advice;
    }

    private static String mismatch(ArgSpec option, String value) {
        Class<?> type = option.auxiliaryTypes()[0];
        if (type.isEnum()) {
            return "none of " + option.paramLabel().replace("|", ", ") + (value.equals("seen") ? "; it is called residual now" : "");
        }
        boolean whole = value.matches("[+-]?[0-9]+");
        return whole ? "too large" : type == double.class || type == Double.class ? "not a number" : "not a whole number";
    }
}
