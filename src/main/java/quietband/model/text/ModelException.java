package quietband.model.text;

import java.util.List;
import java.util.stream.Collectors;

/** A model file, or a file it refers to, cannot be used; carries every problem found. The message has one per line. */
public final class ModelException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient List<FileProblem> problems;

    /** At least one problem, in the order of the file. */
    public ModelException(List<FileProblem> problems) {
        super(problems.stream().map(FileProblem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** A single problem that concerns a whole file. */
    public static ModelException of(String file, String found, String advice) {
        return new ModelException(List.of(new FileProblem(file, 0, 0, "", found, advice)));
    }

    /** Every problem found, in the order of the file. */
    public List<FileProblem> problems() {
        return problems;
    }
}
