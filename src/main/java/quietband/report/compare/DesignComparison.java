package quietband.report.compare;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.response.DesignGrid;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;

/**
 * Two designs side by side.
 *
 * @param first       the one compared
 * @param second      with this
 * @param differences what the files have differently
 */
public record DesignComparison(Side first, Side second, List<ModelDifference> differences) {

    public DesignComparison {
        differences = List.copyOf(differences);
    }

    /**
     * One of the two.
     *
     * @param name       of the file
     * @param hash       of the model
     * @param assessment its verdict
     * @param curves     on the program's own grid over its band
     */
    public record Side(String name, String hash, Assessment assessment, FrequencyTable curves) {

        static Side of(ModelFile file) {
            Design design = file.design();
            double[] grid = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
            return new Side(String.valueOf(file.path().getFileName()), file.hash(), Assessor.assess(design),
                FrequencyTable.of(design, grid, 1));
        }

        /** The title, or the file's name without one. */
        String title() {
            return assessment.design().title().isEmpty() ? name : assessment.design().title();
        }

        int fullest() {
            return curves.stacks().size() - 1;
        }
    }

    /** One thing asked in either design; null where the design does not ask it. */
    public record Pair(String name, RequirementResult first, RequirementResult second) { }

    /** Assesses and compares. */
    public static DesignComparison of(ModelFile first, ModelFile second) {
        return new DesignComparison(Side.of(first), Side.of(second), ModelDifferences.between(first.design(), second.design()));
    }

    /** What is asked, in the order of the first design. */
    List<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        List<RequirementResult> left = new ArrayList<>(second.assessment().requirements());
        for (RequirementResult r : first.assessment().requirements()) {
            RequirementResult other = left.stream().filter(o -> o.name().equals(r.name())).findFirst().orElse(null);
            left.remove(other);
            pairs.add(new Pair(r.name(), r, other));
        }
        left.forEach(r -> pairs.add(new Pair(r.name(), null, r)));
        return pairs;
    }

    /** What came of a requirement, in words. */
    static String outcome(RequirementResult r) {
        return r == null ? "not asked" : r.hasMargin() ? QuantityText.db(r.marginDb())
            : NumberFormat.brief(100 * r.usedShare(), 3) + " % used";
    }
}
