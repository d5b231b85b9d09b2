package quietband.cli.command;

import java.nio.file.Path;
import picocli.CommandLine.Parameters;

/** A command on a model file. */
abstract class ModelCommand extends ResultCommand {

    @Parameters(index = "0", paramLabel = "MODEL", description = "the model file")
    Path model;
}
