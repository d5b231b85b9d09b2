package quietband.window.bench;

import java.util.List;
import quietband.model.edit.FileValue;

/** A part of the model file as the values' panel shows it, one at a time. */
public enum ModelSection {
    RESONATOR("Resonator", "oscillator"),
    PLATFORM("Platform", "platform"),
    CANCELLATION("Cancellation", "cancellation"),
    VIBRATION("Vibration", "vibration"),
    REQUIREMENTS("Requirements", "requirement"),
    TOLERANCES("Tolerances", "tolerances", "correlations", "conditions");

    private final String title;
    @SuppressWarnings("ImmutableEnumChecker") // List.of: cannot be changed
    private final List<String> blocks;

    ModelSection(String title, String... blocks) {
        this.title = title;
        this.blocks = List.of(blocks);
    }

    public String title() {
        return title;
    }

    /** Whether a value stands in it. */
    public boolean holds(FileValue v) {
        String top = v.path().contains(".") ? v.path().substring(0, v.path().indexOf('.')) : v.path();
        return blocks.contains(top);
    }

    /** Whether a value is one that a designer turns: names, places of springs and points of lines are shown when asked for. */
    public static boolean turned(FileValue v) {
        return !v.key().equals("name") && !v.key().equals("at") && !v.key().equals("cut") && !v.key().equals("support")
            && !v.block().startsWith("platform.limits") && !v.block().startsWith("platform.stops");
    }
}
