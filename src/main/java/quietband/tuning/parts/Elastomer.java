package quietband.tuning.parts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;

/**
 * A compound for elastomer mounts: how stiffness and loss factor go with temperature. Its loss factor is taken as the
 * same at all frequencies of the band.
 *
 * @param name      of the compound
 * @param celsius   temperatures, rising
 * @param stiffness factor on the rate at 20 degrees, per temperature
 * @param loss      loss factor, per temperature
 */
public record Elastomer(String name, double[] celsius, double[] stiffness, double[] loss) {

    private static final double ROOM = 20;

    /** Loss factor at 20 degrees. */
    public double roomLoss() {
        for (int i = 0; i < celsius.length; i++) {
            if (celsius[i] == ROOM) {
                return loss[i];
            }
        }
        throw new IllegalStateException(name + " has no row at 20 degrees");
    }

    /** The compound whose loss factor at 20 degrees is nearest. */
    static Elastomer nearest(double wanted) {
        return table().stream().min(Comparator.comparingDouble(e -> Math.abs(StrictMath.log(e.roomLoss() / wanted))))
            .orElseThrow();
    }

    /** The compounds shipped with the program. */
    public static List<Elastomer> table() {
        Map<String, List<CSVRecord>> byName = new LinkedHashMap<>();
        WireMaterial.rows("elastomers.csv").forEach(r -> byName.computeIfAbsent(r.get("compound"), n ->
            new ArrayList<>()).add(r));
        return byName.entrySet().stream().map(e -> new Elastomer(e.getKey(), column(e.getValue(), "celsius"),
            column(e.getValue(), "stiffness_factor"), column(e.getValue(), "loss_factor"))).toList();
    }

    private static double[] column(List<CSVRecord> rows, String name) {
        return rows.stream().mapToDouble(r -> WireMaterial.number(r, name)).toArray();
    }

    /**
     * The nearest of the 80 preferred numbers of a decade (ISO 3, R80: steps of 2.9 %), which moves a natural frequency by 0.72
     * % at most.
     */
    static double preferred(double rate) {
        return StrictMath.pow(10, Math.rint(80 * StrictMath.log10(rate)) / 80);
    }
}
