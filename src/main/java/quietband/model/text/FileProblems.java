package quietband.model.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong, and what is merely odd, in a file while it is read. */
public final class FileProblems {

    private static final int MOST = 100;

    private final String file;
    private final List<FileProblem> errors = new ArrayList<>();
    private final List<FileProblem> warnings = new ArrayList<>();

    public FileProblems(String file) {
        this.file = file;
    }

    public String file() {
        return file;
    }

    public void add(YamlNode node, String path, String found, String advice) {
        add(new FileProblem(file, node.line(), node.column(), path, found, advice));
    }

    public void add(FileProblem problem) {
        if (errors.size() < MOST && !errors.contains(problem)) {
            errors.add(problem);
        }
    }

    public void addAll(List<FileProblem> problems) {
        problems.forEach(this::add);
    }

    public void warn(YamlNode node, String path, String found, String advice) {
        warnings.add(new FileProblem(file, node.line(), node.column(), path, found, advice));
    }

    public boolean none() {
        return errors.isEmpty();
    }

    public boolean full() {
        return errors.size() >= MOST;
    }

    /** Throws when there is any error. */
    public void check() {
        if (!errors.isEmpty()) {
            throw new ModelException(sorted(errors));
        }
    }

    public List<FileProblem> warnings() {
        return sorted(warnings);
    }

    /** By file (this one first), line and column. */
    private List<FileProblem> sorted(List<FileProblem> list) {
        if (list.size() < 2) {
            return List.copyOf(list);
        }
        return list.stream().sorted(Comparator.comparing((FileProblem p) -> !p.file().equals(file))
            .thenComparing(FileProblem::file).thenComparingInt(FileProblem::line).thenComparingInt(FileProblem::column)).toList();
    }
}
