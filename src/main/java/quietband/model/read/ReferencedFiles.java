package quietband.model.read;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.model.format.WrittenValue;
import quietband.model.text.CsvTable;
import quietband.model.text.FileProblem;
import quietband.model.text.FileProblems;
import quietband.model.text.ModelException;
import quietband.model.text.TextFile;
import quietband.model.text.YamlNode;

/** The files a model refers to, found relative to it and read once each. */
final class ReferencedFiles {

    private static final int MOST_BYTES = 4_000_000;

    private final Path model;
    private final FileProblems problems;
    private final Map<String, byte[]> overlay;
    private final Map<String, TextFile> files = new LinkedHashMap<>();

    /** @param overlay bytes that stand for files not written yet, by the name the model uses */
    ReferencedFiles(Path model, FileProblems problems, Map<String, byte[]> overlay) {
        this.model = model;
        this.problems = problems;
        this.overlay = overlay;
    }

    /** The table in a file named at a key; empty, with a problem told, when it cannot be read. */
    Optional<CsvTable> table(WrittenValue key) {
        if (!key.good()) {
            return Optional.empty();
        }
        try {
            return Optional.of(CsvTable.of(file(key.text())));
        } catch (ModelException e) {
            FileProblem first = e.problems().get(0);
            if (first.line() > 0) {
                problems.addAll(e.problems());
            } else {
                problems.add(key.node(), key.path(), "'" + YamlNode.shorten(key.text()) + "': " + first.found(),
                    first.advice() + " (files are found relative to the model file)");
            }
        } catch (InvalidPathException e) {
            problems.add(key.node(), key.path(), key.node().shown() + " is no file name", "write a relative path");
        }
        return Optional.empty();
    }

    private TextFile file(String name) {
        TextFile known = files.get(name);
        if (known != null) {
            return known;
        }
        Path path = model.resolveSibling(name);
        byte[] bytes = overlay.get(name);
        TextFile read = bytes == null ? TextFile.read(path, path.toString(), MOST_BYTES)
            : TextFile.of(path.toString(), bytes);
        files.put(name, read);
        return read;
    }

    /** Every file read, by the name the model uses, in the order of reading. */
    Map<String, TextFile> files() {
        return files;
    }

    /** Runs the checks of a table; its problems go to the model's. Returns whether there was none. */
    boolean collect(Runnable checks) {
        try {
            checks.run();
            return true;
        } catch (ModelException e) {
            problems.addAll(List.copyOf(e.problems()));
            return false;
        }
    }
}
