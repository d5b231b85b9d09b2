package quietband.window;

import java.nio.file.Path;
import java.util.Optional;

/** Puts questions to the person at the window; tests answer in their place. Called on the event thread. */
interface Questions {

    /**
     * Lets one of some answers be chosen.
     *
     * @return index of the answer; -1 when the question was closed
     */
    int choose(String title, String question, String... answers);

    /** Asks for a line of text; empty when the question was closed. */
    Optional<String> line(String title, String question, String first);

    /** Asks for a file; empty when the question was closed. */
    Optional<Path> file(String title, Path near, boolean save);

    /** Tells something that is longer than a line. */
    void tell(String title, String text);
}
