package quietband.window.work;

import java.util.Optional;
import quietband.model.edit.ModelFile;
import quietband.window.bench.ModelSection;

/**
 * A command that changes the design, run from the window: its answer is shown beside the model and then taken over or
 * discarded. One class for each command, listed in {@link Proposals}.
 */
public interface Proposal {

    /** Name of the command, as on the command line. */
    String name();

    /** Where its values are. */
    ModelSection section();

    /** What is asked before it runs, with an answer to start from; empty when it needs nothing. */
    Optional<Question> question();

    /**
     * Works it out; may take seconds and is called on a thread of its own.
     *
     * @param answer to the question; empty when there was none
     * @throws RuntimeException when it cannot be done, with a message that says what to do
     */
    Offer offer(ModelFile model, String answer);

    /** What is asked, and a first answer. */
    record Question(String text, String first) { }

    /**
     * What is proposed.
     *
     * @param changed the model with it
     * @param words   what it does, one line
     */
    record Offer(ModelFile changed, String words) { }
}
