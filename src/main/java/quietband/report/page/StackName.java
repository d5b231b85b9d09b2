package quietband.report.page;

import java.util.Locale;
import quietband.model.Stack;

/** What people call the stacks. */
public final class StackName {

    private StackName() { }

    /** In the middle of a sentence. */
    public static String of(Stack stack) {
        return switch (stack) {
            case BARE -> "bolted down, no correction";
            case ISOLATED -> "platform alone";
            case CANCELLED -> "correction alone";
            case COMBINED -> "platform and correction";
        };
    }

    /** At its beginning. */
    public static String capital(Stack stack) {
        String name = of(stack);
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }
}
