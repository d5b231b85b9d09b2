package quietband.lot;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A lot of measured resonators, column by column, so that a million of them fit; arrays are shared, do not modify.
 *
 * @param file            name of the file
 * @param hash            SHA-256 of the file, hexadecimal
 * @param serials         of every usable row, in the order of the file
 * @param lines           where each stands in the file, from 1
 * @param valuePpbPerG    sensitivity along x, y, z in ppb/g (3 arrays)
 * @param sigmaPpbPerG    standard uncertainty of each in ppb/g, when stated (3 arrays)
 * @param bad             rows that cannot be used as they are, in the order of the file
 */
public record MeasuredLot(String file, String hash, String[] serials, int[] lines, double[][] valuePpbPerG,
                          Optional<double[][]> sigmaPpbPerG, List<BadRow> bad) {

    public MeasuredLot {
        bad = List.copyOf(bad);
    }

    /**
     * A row with something wrong.
     *
     * @param line   in the file, from 1
     * @param serial as written; empty when there is none
     * @param usable whether all numbers are there all the same: a serial that stands twice
     * @param reason what was found
     */
    public record BadRow(int line, String serial, boolean usable, String reason) { }

    /** How many rows are usable. */
    public int size() {
        return lines.length;
    }

    /** The same with one standard uncertainty in ppb/g for every number; one stated in the file stays. */
    public MeasuredLot withSigma(double sigma) {
        if (sigmaPpbPerG.isPresent()) {
            return this;
        }
        double[] all = new double[size()];
        Arrays.fill(all, sigma);
        return new MeasuredLot(file, hash, serials, lines, valuePpbPerG, Optional.of(new double[][] {all, all, all}), bad);
    }

    /** The same without the usable rows among the bad ones; they stay listed. */
    public MeasuredLot withoutBad() {
        Set<Integer> out = new HashSet<>();
        bad.stream().filter(BadRow::usable).forEach(b -> out.add(b.line()));
        if (out.isEmpty()) {
            return this;
        }
        int[] kept = IntStream.range(0, size()).filter(i -> !out.contains(lines[i])).toArray();
        String[] names = Arrays.stream(kept).mapToObj(i -> serials[i]).toArray(String[]::new);
        int[] places = Arrays.stream(kept).map(i -> lines[i]).toArray();
        return new MeasuredLot(file, hash, names, places, picked(valuePpbPerG, kept), sigmaPpbPerG.map(s -> picked(s, kept)), bad);
    }

    private static double[][] picked(double[][] columns, int... kept) {
        return Arrays.stream(columns).map(c -> Arrays.stream(kept).mapToDouble(i -> c[i]).toArray())
            .toArray(double[][]::new);
    }

    /** Length of a unit's vector, ppb/g. */
    public double vector(int unit) {
        double x = valuePpbPerG[0][unit];
        double y = valuePpbPerG[1][unit];
        double z = valuePpbPerG[2][unit];
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** The axis, 0 to 2, on which a unit is most sensitive. */
    public int worstAxis(int unit) {
        double x = Math.abs(valuePpbPerG[0][unit]);
        double y = Math.abs(valuePpbPerG[1][unit]);
        double z = Math.abs(valuePpbPerG[2][unit]);
        return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
    }

    /** What a unit is judged by, ppb/g. */
    public double value(int unit, SortRule.By by) {
        return by == SortRule.By.VECTOR ? vector(unit) : Math.abs(valuePpbPerG[worstAxis(unit)][unit]);
    }
}
