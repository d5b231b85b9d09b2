package quietband.report.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Files of a result that somebody edited after it was written: kept in a folder beside it when it is replaced. */
final class EditedFiles {

    private static final long LATER_MS = 1000;

    private final Path target;
    private final List<Path> kept = new ArrayList<>();
    private Path aside;

    EditedFiles(Path target) {
        this.target = target;
    }

    /** Where they are now. */
    List<Path> kept() {
        return List.copyOf(kept);
    }

    /** Takes the edited files out of an old result, and those that no mark lists. */
    void keep(Path old) throws IOException {
        Map<String, String> listed = ResultMark.filesListedIn(old.resolve(ResultMark.FILE));
        for (String name : ResultMark.names(old)) {
            Path file = old.resolve(name);
            if (Files.isRegularFile(file) && !name.equals(ResultMark.FILE) && edited(file, listed.get(name), old)) {
                Path to = folder().resolve(name);
                Files.createDirectories(to.getParent());
                Files.move(file, to);
                kept.add(to);
            }
        }
    }

    /** By its hash; without one by its time, for the mark was written last. */
    private static boolean edited(Path file, String hash, Path result) throws IOException {
        if (hash == null || !hash.isEmpty()) {
            return hash == null || !hash.equals(ContentHash.of(List.of(file)));
        }
        return Files.getLastModifiedTime(file).toMillis()
            > Files.getLastModifiedTime(result.resolve(ResultMark.FILE)).toMillis() + LATER_MS;
    }

    private Path folder() throws IOException {
        for (int i = 1; aside == null; i++) {
            Path free = target.resolveSibling(target.getFileName() + "-edited" + (i == 1 ? "" : "-" + i));
            if (!Files.exists(free)) {
                aside = Files.createDirectory(free);
            }
        }
        return aside;
    }
}
