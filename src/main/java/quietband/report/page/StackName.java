package quietband.report.page;

import java.util.Locale;
import quietband.model.Stack;

/** What people call the stacks. */
public final class StackName {

    /** What the names mean, for the top of a report. */
    public static final String EXPLAINED = "bare: bolted down without cancellation; isolated: on the platform; cancelled: with the "
        + "cancellation; combined: with both.";

    private StackName() { }

    /** In the middle of a sentence. */
    public static String of(Stack stack) {
        return stack.key();
    }

    /** At its beginning. */
    public static String capital(Stack stack) {
        return of(stack).substring(0, 1).toUpperCase(Locale.ROOT) + of(stack).substring(1);
    }
}
