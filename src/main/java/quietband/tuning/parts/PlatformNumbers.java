package quietband.tuning.parts;

import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.model.quantity.NumberSlot;

/** The numbers of a design's platform while they are changed; the design itself stays as it is. */
public final class PlatformNumbers {

    private static final String SPRINGS = "platform.springs.";

    private final Design base;
    private final List<NumberSlot> slots;
    private final double[] v;

    /** Starts from a design that has a platform. */
    public PlatformNumbers(Design base) {
        this.base = base;
        this.slots = base.quantities().slots();
        this.v = base.quantities().values();
    }

    /** The changed design. */
    public Design design() {
        return base.with(base.quantities().with(v));
    }

    private int[] springSlots(String key, String group, int axis) {
        String quantity = SPRINGS + key;
        return IntStream.range(0, slots.size()).filter(i -> slots.get(i).quantity().equals(quantity)
            && (group.isEmpty() || slots.get(i).group().equals(group))
            && (axis < 0 || slots.get(i).axis() < 0 || slots.get(i).axis() == axis)).toArray();
    }

    /** Multiplies what the file says of every spring along a principal axis; an empty group is all of them. */
    public void scale(String key, String group, int axis, double factor) {
        for (int i : springSlots(key, group, axis)) {
            v[i] *= Double.isFinite(v[i]) ? factor : 1;
        }
    }

    /** Sets what the file says of every spring of a group along a principal axis (-1: all). */
    public void set(String key, String group, int axis, double value) {
        for (int i : springSlots(key, group, axis)) {
            v[i] = value;
        }
    }

    /** Multiplies the rates of one spring. */
    public void scaleOne(Spring spring, double factor) {
        for (int i : springSlots("stiffness", spring.group(), -1)) {
            v[i] *= slots.get(i).place() == spring.place() ? factor : 1;
        }
    }

    /** Moves every spring's place. */
    public void shift(Vec by) {
        for (int i : springSlots("at", "", -1)) {
            v[i] += by.get(slots.get(i).axis());
        }
    }

    /** Spreads the places from a point: the distance along an axis is multiplied. */
    public void spread(Vec from, Vec factor) {
        for (int i : springSlots("at", "", -1)) {
            int axis = slots.get(i).axis();
            v[i] = from.get(axis) + factor.get(axis) * (v[i] - from.get(axis));
        }
    }

    private int slot(String path) {
        for (int i = 0; i < slots.size(); i++) {
            if (slots.get(i).path().equals(path)) {
                return i;
            }
        }
        throw new IllegalStateException(path + " has no slot");
    }

    /** Adds a point of mass: mass, centre of gravity and inertia follow by the parallel-axis theorem. */
    public void ballast(double mass, Vec at) {
        if (mass == 0) {
            return;
        }
        Platform p = design().platform().orElseThrow();
        double all = p.mass() + mass;
        Vec centre = p.centreOfGravity().times(p.mass() / all).plus(at.times(mass / all));
        Vec d = p.centreOfGravity().minus(centre);
        Vec e = at.minus(centre);
        Platform.Inertia j = p.inertia();
        double[] wanted = {
            j.xx() + p.mass() * (d.y() * d.y() + d.z() * d.z()) + mass * (e.y() * e.y() + e.z() * e.z()),
            j.yy() + p.mass() * (d.x() * d.x() + d.z() * d.z()) + mass * (e.x() * e.x() + e.z() * e.z()),
            j.zz() + p.mass() * (d.x() * d.x() + d.y() * d.y()) + mass * (e.x() * e.x() + e.y() * e.y()),
            j.xy() + p.mass() * d.x() * d.y() + mass * e.x() * e.y(),
            j.xz() + p.mass() * d.x() * d.z() + mass * e.x() * e.z(),
            j.yz() + p.mass() * d.y() * d.z() + mass * e.y() * e.z()};
        String[] keys = {"xx", "yy", "zz", "xy", "xz", "yz"};
        v[slot("platform.mass")] = all;
        for (int i = 0; i < 3; i++) {
            v[slot("platform.centre_of_gravity." + "xyz".charAt(i))] = centre.get(i);
        }
        double nominal = base.platform().orElseThrow().mass();
        for (int i = 0; i < 6; i++) {
            int s = slot("platform.inertia." + keys[i]);
            // where inertia follows mass and size, its slot acts as a factor on what follows
            boolean follows = slots.get(s).absent() && base.quantities().value(s) != 0;
            v[s] = follows ? wanted[i] * nominal / all : wanted[i];
        }
    }
}
