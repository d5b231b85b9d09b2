package quietband.report.page;

import java.util.Locale;
import quietband.model.Stack;

/** What people call the stacks. */
public final class StackName {

    /** What the names mean, for the top of a report. */
    public static final String EXPLAINED = "bare: bolted down without cancellation; isolated: on the platform; cancelled: with the "
        + "cancellation; combined: with both.";

    private StackName() { }

    /** At its beginning. */
    public static String capital(Stack stack) {
        return stack.key().substring(0, 1).toUpperCase(Locale.ROOT) + stack.key().substring(1);
    }
}
