package quietband.study.compare;

import java.util.ArrayList;
import java.util.List;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
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
     * @param table      at the frequencies of the table
     */
    public record Side(String name, String hash, Assessment assessment, FrequencyTable curves, FrequencyTable table) {

        static Side of(ModelFile file, double[] frequencies, int threads) {
            Design design = file.design();
            double[] grid = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
            return new Side(String.valueOf(file.path().getFileName()), file.hash(), Assessor.assess(design),
                FrequencyTable.of(design, grid, threads), FrequencyTable.of(design, frequencies, threads));
        }

        /** The title, or the file's name without one. */
        public String title() {
            return assessment.design().title().isEmpty() ? name : assessment.design().title();
        }

        /** Place of the fullest stack in the rows of both tables. */
        public int fullest() {
            return curves.stacks().size() - 1;
        }
    }

    /** One thing asked in either design; null where the design does not ask it. */
    public record Pair(String name, RequirementResult first, RequirementResult second) { }

    /**
     * Assesses and compares.
     *
     * @param frequencies of the table, Hz
     * @param threads     how many share the work; changes no figure
     */
    public static DesignComparison of(ModelFile first, ModelFile second, double[] frequencies, int threads) {
        return new DesignComparison(Side.of(first, frequencies, threads), Side.of(second, frequencies, threads),
            ModelDifferences.between(first.design(), second.design()));
    }

    /** What is asked, in the order of the first design. */
    public List<Pair> pairs() {
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
}
