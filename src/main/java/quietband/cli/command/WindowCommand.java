package quietband.cli.command;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import quietband.cli.terminal.InputErrorException;
import quietband.cli.terminal.Version;
import quietband.window.NoDisplayException;
import quietband.window.OpenWindow;

/** The desktop window on a model file. */
@Command(name = "window", mixinStandardHelpOptions = true,
    description = "Opens a window on a model file: change a value, see the band at once. Without MODEL it starts with a commented "
        + "model that is in no file yet. Everything can be done by keyboard; F1 lists the keys.")
public final class WindowCommand implements Runnable {

    @Parameters(paramLabel = "MODEL", arity = "0..1", description = "the model file")
    private Path model;

    @Option(names = "--dark", description = "light lines on dark paper")
    private boolean dark;

    @Option(names = "--scale", paramLabel = "PERCENT", defaultValue = "100",
        description = "size of texts and drawings, 100 to 200; default: ${DEFAULT-VALUE}")
    private int scale;

    @Override
    public void run() {
        if (scale < 100 || scale > 200) {
            throw new InputErrorException("--scale " + scale + ": between 100 and 200");
        }
        try {
            OpenWindow.andWait(Optional.ofNullable(model), dark, scale, Version.number());
        } catch (NoDisplayException e) {
            throw new InputErrorException(e.getMessage());
        }
    }
}
