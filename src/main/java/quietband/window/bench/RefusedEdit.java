package quietband.window.bench;

import java.io.UncheckedIOException;
import java.util.List;
import quietband.filter.FilterException;
import quietband.identification.FitException;
import quietband.model.quantity.BadPathException;
import quietband.model.text.FileProblem;
import quietband.model.text.ModelException;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.SingularPlatformException;
import quietband.report.file.ResultException;
import quietband.tolerance.draw.ToleranceException;

/**
 * Why an order was not done. The last good result stays.
 *
 * @param about what it concerned: the path of a value, or empty
 * @param typed what was typed
 * @param why   for people, one line
 * @param disk  whether it would have written over a file that changed on disk
 */
public record RefusedEdit(String about, String typed, String why, boolean disk) {

    /** From what was thrown. */
    public static RefusedEdit of(EditOrder order, RuntimeException e) {
        if (e instanceof ModelException m) {
            return new RefusedEdit(order.about(), order.typed(), words(order.about(), m.problems()), false);
        }
        if (e instanceof BadPathException b) {
            return new RefusedEdit(order.about(), order.typed(), sentence(b.found(), b.advice()), false);
        }
        String said = String.valueOf(e.getMessage()).replaceAll("\\s+", " ");
        boolean disk = e instanceof ModelStore.Changed;
        boolean mendable = disk || e instanceof SingularPlatformException || e instanceof ResultException
            || e instanceof ToleranceException
                || e instanceof ImpossibleRequestException || e instanceof FilterException || e instanceof FitException
            || e instanceof UncheckedIOException || e instanceof IllegalArgumentException || e instanceof ArithmeticException;
        return new RefusedEdit(order.about(), order.typed(), mendable ? said
            : "a defect of this program: " + e.getClass().getSimpleName() + ": " + said, disk);
    }

    private static String words(String about, List<FileProblem> problems) {
        FileProblem first = problems.stream().filter(p -> p.path().equals(about)).findFirst().orElse(problems.get(0));
        String where = first.path().equals(about) || first.path().isEmpty() ? "" : first.path() + " ";
        String more = problems.size() > 1 ? " (and " + (problems.size() - 1) + " more)" : "";
        return where + sentence(first.found(), first.advice()) + more;
    }

    private static String sentence(String found, String advice) {
        return advice.isEmpty() ? found : found + "; " + advice;
    }
}
