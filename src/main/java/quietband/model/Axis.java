package quietband.model;

import java.util.List;
import java.util.Locale;

/** An axis of the platform and of the housing, which are parallel. */
public enum Axis {
    X, Y, Z;

    /** All three, in order. */
    public static final List<Axis> ALL = List.of(values());

    /** The letter used in files and messages: x, y or z. */
    public String letter() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The axis written as {@code x}, {@code y} or {@code z}; null when the text is none of them. */
    public static Axis of(String letter) {
        return switch (letter) {
            case "x" -> X;
            case "y" -> Y;
            case "z" -> Z;
            default -> null;
        };
    }
}
