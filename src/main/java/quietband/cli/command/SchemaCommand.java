package quietband.cli.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import quietband.model.format.ModelSchema;

/** The JSON Schema of model files, for editors. */
@Command(name = "schema", mixinStandardHelpOptions = true, description = "Prints the JSON Schema of model files, for editors.")
public final class SchemaCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        spec.commandLine().getOut().print(ModelSchema.text());
        spec.commandLine().getOut().flush();
    }
}
