package quietband.report;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.response.Assessment;
import quietband.response.Assessor;
import quietband.response.FrequencyTable;
import quietband.response.OwnGrid;
import quietband.response.RequirementResult;

/**
 * Two designs side by side.
 *
 * @param first       the one compared
 * @param second      with this
 * @param differences what the files have differently
 */
public record Comparison(Side first, Side second, List<Difference> differences) {

    public Comparison {
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
            double[] grid = OwnGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
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
    public static Comparison of(ModelFile first, ModelFile second) {
        return new Comparison(Side.of(first), Side.of(second), Differences.between(first.design(), second.design()));
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
        return r == null ? "not asked" : r.hasMargin() ? Words.db(r.marginDb())
            : Digits.brief(100 * r.usedShare(), 3) + " % used";
    }
}
