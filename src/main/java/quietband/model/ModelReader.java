package quietband.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Reads, checks and compiles a model: text to nodes, nodes to the value tree, the tree to records. */
final class ModelReader {

    /** What reading gives. */
    record Result(Design design, List<Problem> warnings, Map<String, TextFile> files) { }

    private ModelReader() { }

    /**
     * Reads a whole model.
     *
     * @param path    of the model file, from which references are found and which messages name
     * @param text    of the file
     * @param overlay files that stand for others, by the name the model uses
     */
    static Result read(Path path, String text, Map<String, byte[]> overlay) {
        Problems problems = new Problems(path.toString());
        Written root = new Walker(problems).root(NodeReader.read(problems.file(), text));
        References references = new References(path, problems, overlay);
        if (root.get("platform").given()) {
            new PlatformChecks(root.get("platform"), problems).run();
        }
        if (root.get("cancellation").given()) {
            new CancellationChecks(root.get("cancellation"), references, problems).run();
        }
        new VibrationChecks(root, references, problems).run();
        Followers.fill(root);
        Layout layout = new Layout(root);
        double[] numbers = layout.values();
        Quantities quantities = new Quantities(layout, numbers);
        ScatterReader scatter = new ScatterReader(quantities, references, problems);
        List<Tolerance> tolerances = scatter.tolerances(root.get("tolerances"));
        List<Tolerance.Condition> conditions = scatter.conditions(root.get("conditions"));
        boolean allRead = tolerances.size() == root.get("tolerances").items().size() && !root.get("tolerances").bad();
        List<Tolerance.Correlation> correlations =
            new CorrelationReader(tolerances, quantities, problems).read(root.get("correlations"), allRead);
        problems.check();
        DesignMaker maker = DesignMaker.compile(root, layout, numbers);
        layout.compiled(maker);
        Design design = Design.of(root.get("title").text(), tolerances, correlations, conditions, quantities);
        return new Result(design, problems.warnings(), references.files());
    }
}
