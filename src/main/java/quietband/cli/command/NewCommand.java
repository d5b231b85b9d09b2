package quietband.cli.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
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
        Path target = file.toAbsolutePath();
        Path part = target.resolveSibling("." + target.getFileName() + "." + Long.toHexString(System.nanoTime()) + ".part");
        try {
            if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                throw new FileAlreadyExistsException(file.toString());
            }
            try {
                Files.writeString(part, StartModel.text(), StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
                // never over a file that came meanwhile
                Files.move(part, target);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (FileAlreadyExistsException e) {
            throw new InputErrorException(file + ": exists already and is left as it is; name another file");
        } catch (NoSuchFileException e) {
            throw new InputErrorException(file + ": cannot be written, its folder is not there; name another place");
        } catch (AccessDeniedException e) {
            throw new InputErrorException(file + ": cannot be written, the folder's permissions forbid it; name another place");
        } catch (FileSystemException e) {
            throw new InputErrorException(file + ": cannot be written (" + (e.getReason() == null ? "refused by the system"
                : e.getReason()) + "); name another place");
        } catch (IOException e) {
            throw new InputErrorException(file + ": cannot be written (" + e.getMessage() + "); name another place");
        }
        spec.commandLine().getErr().println("Wrote " + file + "; next: quietband assess " + file);
    }
}
