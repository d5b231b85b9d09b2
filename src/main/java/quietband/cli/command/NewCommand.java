package quietband.cli.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import quietband.cli.terminal.InputErrorException;
import quietband.model.edit.StartModel;

/** A commented model file to start from. */
@Command(name = "new", mixinStandardHelpOptions = true,
    description = "Writes a commented model file to start from; never overwrites a file.")
public final class NewCommand implements Runnable {

    @Parameters(paramLabel = "FILE", description = "the file to write, e.g. design.yaml")
    private Path file;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        try {
            Files.writeString(file, StartModel.text(), StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException e) {
            throw new InputErrorException(file + ": exists already and is left as it is; name another file");
        } catch (IOException e) {
            throw new InputErrorException(file + ": cannot be written (" + e.getClass().getSimpleName() + "); name another place");
        }
        spec.commandLine().getErr().println("Wrote " + file + "; next: quietband assess " + file);
    }
}
