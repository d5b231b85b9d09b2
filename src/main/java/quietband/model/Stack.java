package quietband.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Which counter-measures are in place. Bolted down means that the platform moves as the housing does. */
public enum Stack {
    /** Bolted down, no cancellation. */
    BARE(false, false),
    /** On springs, no cancellation. */
    ISOLATED(true, false),
    /** Bolted down, cancellation on. */
    CANCELLED(false, true),
    /** On springs, cancellation on. */
    COMBINED(true, true);

    private final boolean sprung;
    private final boolean corrected;

    Stack(boolean sprung, boolean corrected) {
        this.sprung = sprung;
        this.corrected = corrected;
    }

    /** Whether the platform's springs act. */
    public boolean sprung() {
        return sprung;
    }

    /** Whether the cancellation is on. */
    public boolean corrected() {
        return corrected;
    }

    /** The name in files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The stacks that the blocks of a design allow, fullest last. */
    public static List<Stack> of(Design design) {
        List<Stack> stacks = new ArrayList<>();
        for (Stack s : values()) {
            if ((!s.sprung || design.platform().isPresent()) && (!s.corrected || design.cancellation().isPresent())) {
                stacks.add(s);
            }
        }
        return stacks;
    }

    /** The fullest stack of the design. */
    public static Stack fullest(Design design) {
        List<Stack> stacks = of(design);
        return stacks.get(stacks.size() - 1);
    }
}
