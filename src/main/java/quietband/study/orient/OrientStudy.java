package quietband.study.orient;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.tuning.orient.Orientation;
import quietband.tuning.orient.SupportRow;
import quietband.tuning.orient.SupportTable;
import quietband.units.Amounts;

/**
 * A resonator turned as serves best.
 *
 * @param base        the model that is turned, with the support chosen
 * @param changed     the model turned
 * @param turn        found
 * @param before      verdict of the fullest stack of {@code base}
 * @param after       the same turned
 * @param frequencyHz of the curves, Hz (not copied, do not modify)
 * @param worstBefore worst axis of the fullest stack there, 1/g (not copied, do not modify)
 * @param worstAfter  the same turned
 * @param tried       supports of a table, each with its best turn; empty without a table
 * @param known       whether the table has the support that the model's sensitivity was measured on
 */
public record OrientStudy(ModelFile base, ModelFile changed, Orientation turn, StackVerdict before, StackVerdict after,
                          double[] frequencyHz, double[] worstBefore, double[] worstAfter, List<TriedSupport> tried, boolean known) {

    public OrientStudy {
        tried = List.copyOf(tried);
    }

    /**
     * Turns a resonator.
     *
     * @param table       supports to be tried; may be empty
     * @param chosen      support of the table to write into the model
     * @param frequencies of the curves, Hz
     * @param threads     how many share the work; changes no figure
     */
    public static OrientStudy of(ModelFile file, Orientation.Goal goal, List<SupportRow> table, Optional<SupportRow> chosen,
                                 double[] frequencies, int threads) {
        SupportRow own = SupportTable.find(table, file.design().oscillator().resonator().support()).orElse(null);
        ModelFile base = chosen.map(c -> c.in(file, own)).orElse(file);
        Orientation turn = Orientation.of(base.design(), goal);
        ModelFile changed = turned(base, turn.turn());
        List<TriedSupport> tried = table.stream().map(row -> TriedSupport.of(row, row.in(file, own), goal)).toList();
        return new OrientStudy(base, changed, turn, fullest(base), fullest(changed), frequencies, worst(base, frequencies, threads),
            worst(changed, frequencies, threads), tried, own != null);
    }

    /** The model with a turn of its resonator in place of the one it has. */
    public static ModelFile turned(ModelFile base, Rotation turn) {
        Vec a = turn.axis();
        String axis = "{x: " + Amounts.print(a.x()) + ", y: " + Amounts.print(a.y()) + ", z: " + Amounts.print(a.z()) + "}";
        return base.withValue("oscillator.resonator.orientation", "{axis: " + axis + ", angle: "
            + Amounts.print(Math.toDegrees(turn.angle())) + " deg}");
    }

    private static StackVerdict fullest(ModelFile file) {
        Assessment a = Assessor.assess(file.design());
        return a.verdict(a.fullest());
    }

    private static double[] worst(ModelFile file, double[] frequencies, int threads) {
        FrequencyTable table = FrequencyTable.of(file.design(), frequencies, threads);
        int stack = table.stacks().size() - 1;
        return table.rows().stream().mapToDouble(r -> Arrays.stream(r.residualPerG()[stack]).max().orElse(0)).toArray();
    }
}
