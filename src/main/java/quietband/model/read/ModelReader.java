package quietband.model.read;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import quietband.model.Design;
import quietband.model.Tolerance;
import quietband.model.compile.DerivedNumbers;
import quietband.model.compile.DesignMaker;
import quietband.model.compile.QuantityLayout;
import quietband.model.format.WrittenValue;
import quietband.model.quantity.Quantities;
import quietband.model.text.FileProblem;
import quietband.model.text.FileProblems;
import quietband.model.text.TextFile;
import quietband.model.text.YamlReader;

/** Reads, checks and compiles a model: text to nodes, nodes to the value tree, the tree to records. */
public final class ModelReader {

    /** What reading gives. */
    public record Result(Design design, List<FileProblem> warnings, Map<String, TextFile> files) { }

    private ModelReader() { }

    /**
     * Reads a whole model.
     *
     * @param path    of the model file, from which references are found and which messages name
     * @param text    of the file
     * @param overlay files that stand for others, by the name the model uses
     */
    public static Result read(Path path, String text, Map<String, byte[]> overlay) {
        FileProblems problems = new FileProblems(path.toString());
        WrittenValue root = new FormatReader(problems).root(YamlReader.read(problems.file(), text));
        ReferencedFiles references = new ReferencedFiles(path, problems, overlay);
        if (root.get("platform").given()) {
            new PlatformChecks(root.get("platform"), problems).run();
        }
        if (root.get("cancellation").given()) {
            new CancellationChecks(root.get("cancellation"), references, problems).run();
        }
        new VibrationChecks(root, references, problems).run();
        DerivedNumbers.fill(root);
        QuantityLayout layout = new QuantityLayout(root);
        double[] numbers = layout.values();
        Quantities quantities = new Quantities(layout.slots(), numbers);
        ScatterReader scatter = new ScatterReader(quantities, references, problems);
        List<Tolerance> tolerances = scatter.tolerances(root.get("tolerances"));
        List<Tolerance.Condition> conditions = scatter.conditions(root.get("conditions"));
        boolean allRead = tolerances.size() == root.get("tolerances").items().size() && !root.get("tolerances").bad();
        List<Tolerance.Correlation> correlations =
            new CorrelationReader(tolerances, quantities, problems).read(root.get("correlations"), allRead);
        problems.check();
        Design design = Design.of(root.get("title").text(), tolerances, correlations, conditions, quantities,
            DesignMaker.compile(root, layout, numbers));
        return new Result(design, problems.warnings(), references.files());
    }
}
