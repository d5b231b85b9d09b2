package quietband.tolerance.kernel;

import java.util.ArrayList;
import java.util.List;
import quietband.model.Design;
import quietband.tolerance.draw.ImpossibleUnitException;

/**
 * The springs with mass of a design as its units expand theirs around them: m/k* of each family by number, and the functions that
 * belong to it on a block of frequencies, which all units share.
 */
public final class LineTables {

    /** No tables: every unit expands around its own lines. */
    public static final LineTables NONE = new LineTables(List.of(), 0);

    /** Beyond this share of the first pole units would need more orders than a table has. */
    private static final double NEAREST_POLE = 0.8;

    private final List<LineFamily> families;
    private final double top;

    private LineTables(List<LineFamily> families, double top) {
        this.families = families;
        this.top = top;
    }

    /**
     * The families of a design.
     *
     * @param top highest angular frequency that tables are made for, rad/s
     */
    public static LineTables of(Design design, double top) {
        if (design.platform().isEmpty()) {
            return NONE;
        }
        UnitBody body = new UnitBody();
        try {
            body.fill(design.platform().get(), false);
        } catch (ImpossibleUnitException e) {
            return NONE;
        }
        List<LineFamily> families = new ArrayList<>();
        int count = body.lines.stream().mapToInt(l -> l.family() + 1).max().orElse(0);
        for (int f = 0; f < count; f++) {
            int family = f;
            List<UnitBody.Line> members = body.lines.stream().filter(l -> l.family() == family).toList();
            LineFamily made = new LineFamily();
            made.aroundMean(members);
            families.add(members.isEmpty() ? null : made);
        }
        return new LineTables(families, top);
    }

    /** Whether there is a table of a family. */
    boolean holds(int family) {
        return family < families.size() && families.get(family) != null
            && families.get(family).size(top) < NEAREST_POLE * Math.PI * Math.PI;
    }

    double alphaRe(int family) {
        return families.get(family).alphaRe;
    }

    double alphaIm(int family) {
        return families.get(family).alphaIm;
    }

    /** The functions of every family on a block; null where there is no table. Families that behave alike share one. */
    LineFunctions[] on(double[] w2, double topOfBlock, int n) {
        LineFunctions[] made = new LineFunctions[families.size()];
        for (int f = 0; f < made.length; f++) {
            if (holds(f) && topOfBlock <= top) {
                made[f] = alike(f, made);
                if (made[f] == null) {
                    made[f] = new LineFunctions(LineFamily.TABLED, n);
                    made[f].at(families.get(f), w2, topOfBlock, LineFamily.TABLED, n);
                }
            }
        }
        return made;
    }

    private LineFunctions alike(int f, LineFunctions[] made) {
        for (int g = 0; g < f; g++) {
            if (made[g] != null && alphaRe(g) == alphaRe(f) && alphaIm(g) == alphaIm(f)) {
                return made[g];
            }
        }
        return null;
    }
}
