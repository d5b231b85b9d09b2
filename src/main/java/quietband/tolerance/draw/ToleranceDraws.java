package quietband.tolerance.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import quietband.model.Design;
import quietband.model.Tolerance;
import quietband.model.quantity.Quantities;

/**
 * The tolerances of a design, ready for drawing. A unit is a point in the space of independent standard normals (one per
 * drawn number); correlations mix them component by component, distributions bend them, and the values act on the design's numbers in
 * the order of the file.
 */
public final class ToleranceDraws {

    private final Quantities nominal;
    private final List<DrawnTolerance> entries;
    private final List<List<Integer>> groups;
    private final List<double[][]> mixing;
    private final int size;
    private final int[] touched;

    private ToleranceDraws(Quantities nominal, List<DrawnTolerance> entries, List<List<Integer>> groups, List<double[][]> mixing) {
        this.nominal = nominal;
        this.entries = List.copyOf(entries);
        this.groups = groups;
        this.mixing = mixing;
        this.size = entries.stream().mapToInt(e -> e.first() + e.count()).max().orElse(0);
        TreeSet<Integer> slots = new TreeSet<>();
        entries.forEach(e -> IntStream.of(e.slots()).forEach(slots::add));
        this.touched = slots.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * The tolerances of a design.
     *
     * @throws ToleranceException when one cannot be drawn as written
     */
    public static ToleranceDraws of(Design design) {
        List<DrawnTolerance> entries = new ArrayList<>();
        int first = 0;
        for (Tolerance t : design.tolerances()) {
            DrawnTolerance e = DrawnTolerance.of(t, design.quantities(), first);
            entries.add(e);
            first += e.count();
        }
        List<List<Integer>> groups = CorrelationFactor.groups(design);
        List<double[][]> mixing = groups.stream().map(g -> CorrelationFactor.mixing(design, g)).toList();
        return new ToleranceDraws(design.quantities(), entries, groups, mixing);
    }

    /** The same with one tolerance's value halved (a lot: its rows moved halfway to their mean). */
    public ToleranceDraws halved(int entry) {
        List<DrawnTolerance> changed = new ArrayList<>(entries);
        changed.set(entry, entries.get(entry).halved());
        return new ToleranceDraws(nominal, changed, groups, mixing);
    }

    /** How many tolerances there are. */
    public int count() {
        return entries.size();
    }

    /** A tolerance's name. */
    public String name(int entry) {
        return entries.get(entry).tolerance().name();
    }

    /** Whether a tolerance draws rows of a lot. */
    public boolean isLot(int entry) {
        return entries.get(entry).isLot();
    }

    /** Tolerances that are drawn together: sets of indices that correlations tie, each with its lowest first; singles too. */
    public List<List<Integer>> groups() {
        return groups;
    }

    /** How many independent standard normals make a unit. */
    public int size() {
        return size;
    }

    /** Where a tolerance's normals begin among them. */
    public int first(int entry) {
        return entries.get(entry).first();
    }

    /** How many normals a tolerance has. */
    public int count(int entry) {
        return entries.get(entry).count();
    }

    public List<DrawnTolerance> entries() {
        return entries;
    }

    /** The slots that differ between units, rising. */
    public int[] touched() {
        return touched.clone();
    }

    /** The independent normals of a unit; attempt counts the impossible ones before it. */
    public double[] normals(long seed, long unit, int attempt) {
        double[] z = new double[size];
        UnitStream.normals(seed, UnitStream.Purpose.UNIT, attempt, unit, z);
        return z;
    }

    /**
     * The numbers of the unit at a point.
     *
     * @param independent standard normals; not modified
     */
    public Quantities at(double[] independent) {
        double[] z = correlated(independent);
        return nominal.altered(values -> {
            for (DrawnTolerance e : entries) {
                e.act(z, nominal, values);
            }
        });
    }

    /** Whether a unit's drawn numbers are all in the range that makes sense for them. */
    public boolean possible(Quantities unit) {
        return unit.within(touched);
    }

    /** The correlated normals of a point, tolerance by tolerance. */
    public double[] correlated(double[] independent) {
        double[] z = independent.clone();
        for (int g = 0; g < groups.size(); g++) {
            List<Integer> members = groups.get(g);
            if (members.size() > 1) {
                mix(members, mixing.get(g), independent, z);
            }
        }
        return z;
    }

    private void mix(List<Integer> members, double[][] factor, double[] independent, double[] z) {
        for (int k = 0; k < entries.get(members.get(0)).count(); k++) {
            for (int i = 0; i < members.size(); i++) {
                double sum = 0;
                for (int j = 0; j <= i; j++) {
                    sum += factor[i][j] * independent[entries.get(members.get(j)).first() + k];
                }
                z[entries.get(members.get(i)).first() + k] = sum;
            }
        }
    }

    /** Root of the sum of squares of a point. */
    static double distance(double[] z) {
        return Math.sqrt(Arrays.stream(z).map(v -> v * v).sum());
    }
}
