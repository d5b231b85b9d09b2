package quietband.tolerance.kernel;

import java.util.ArrayList;
import java.util.List;

/**
 * A unit's springs with mass in families: those of one group and axis, or each line by itself where they differ too much for the
 * band. Filled anew for each unit; one object serves one thread.
 */
final class LineFamilies {

    private final double top;
    private final List<LineFamily> room = new ArrayList<>();
    private final List<UnitBody.Line> members = new ArrayList<>();
    private int count;

    /**
     * For units of a design.
     *
     * @param top highest angular frequency, rad/s
     */
    LineFamilies(double top) {
        this.top = top;
    }

    /** How many there are. */
    int count() {
        return count;
    }

    /** One of them. */
    LineFamily get(int i) {
        return room.get(i);
    }

    /** Takes up a unit's lines. */
    void fill(List<UnitBody.Line> lines) {
        count = 0;
        int families = 0;
        for (UnitBody.Line line : lines) {
            families = Math.max(families, line.family() + 1);
        }
        for (int f = 0; f < families; f++) {
            members.clear();
            for (UnitBody.Line line : lines) {
                if (line.family() == f) {
                    members.add(line);
                }
            }
            if (!members.isEmpty()) {
                add();
            }
        }
    }

    private void add() {
        LineFamily family = next();
        family.aroundMean(members);
        if (members.size() == 1 || family.holds(top)) {
            family.sum(members, top);
            return;
        }
        count--;
        for (UnitBody.Line line : members) {
            LineFamily single = next();
            single.aroundMean(List.of(line));
            single.sum(List.of(line), top);
        }
    }

    private LineFamily next() {
        if (count == room.size()) {
            room.add(new LineFamily());
        }
        return room.get(count++);
    }
}
