package quietband.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import quietband.cli.terminal.Version;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentPage;
import quietband.work.BackgroundParts;

/**
 * Reads the model of a command that begins with it on a second thread while the options on the command line are made out, and loads
 * what is needed later while there is still a wait for it.
 */
public final class Ahead {

    private static final Set<String> EAGER = Set.of("assess", "tolerance");

    private final Path path;
    private final BackgroundParts<ModelFile> model;

    private Ahead(Path path) {
        this.path = path;
        this.model = path == null ? null : BackgroundParts.on("ahead", List.of(() -> ModelFile.read(path), Ahead::load));
    }

    /** Begins, when the command is one of these and its model comes first. */
    static Ahead of(String... args) {
        if (args.length < 2 || !EAGER.contains(args[0]) || args[1].startsWith("-")) {
            return new Ahead(null);
        }
        try {
            return new Ahead(Path.of(args[1]));
        } catch (InvalidPathException e) {
            return new Ahead(null);
        }
    }

    private static ModelFile load() {
        Version.number();
        ModelFile.load();
        AssessmentPage.load();
        return null;
    }

    /** The model of a file, as read ahead or else read now; what is wrong with it is thrown here. */
    public ModelFile model(Path file) {
        return file.equals(path) ? model.finish().get(0) : ModelFile.read(file);
    }
}
