package quietband.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong, and what is merely odd, in a file while it is read. */
final class Problems {

    private static final int MOST = 100;

    private final String file;
    private final List<Problem> errors = new ArrayList<>();
    private final List<Problem> warnings = new ArrayList<>();

    Problems(String file) {
        this.file = file;
    }

    String file() {
        return file;
    }

    void add(Node node, String path, String found, String advice) {
        add(new Problem(file, node.line(), node.column(), path, found, advice));
    }

    void add(Problem problem) {
        if (errors.size() < MOST && !errors.contains(problem)) {
            errors.add(problem);
        }
    }

    void addAll(List<Problem> problems) {
        problems.forEach(this::add);
    }

    void warn(Node node, String path, String found, String advice) {
        warnings.add(new Problem(file, node.line(), node.column(), path, found, advice));
    }

    boolean none() {
        return errors.isEmpty();
    }

    boolean full() {
        return errors.size() >= MOST;
    }

    /** Throws when there is any error. */
    void check() {
        if (!errors.isEmpty()) {
            throw new ModelException(sorted(errors));
        }
    }

    List<Problem> warnings() {
        return sorted(warnings);
    }

    /** By file (this one first), line and column. */
    private List<Problem> sorted(List<Problem> list) {
        if (list.size() < 2) {
            return List.copyOf(list);
        }
        return list.stream().sorted(Comparator.comparing((Problem p) -> !p.file().equals(file))
            .thenComparing(Problem::file).thenComparingInt(Problem::line).thenComparingInt(Problem::column)).toList();
    }
}
