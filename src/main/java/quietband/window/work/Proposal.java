package quietband.window.work;

import java.util.Optional;
import java.util.function.BiFunction;
import quietband.model.edit.ModelFile;
import quietband.window.bench.ModelSection;

/**
 * A command that changes the design, run from the window: its answer is shown beside the model and then taken over or
 * discarded.
 *
 * @param name     of the command, as on the command line
 * @param section  where its values are
 * @param question what is asked before it runs; empty when it needs nothing
 * @param offer    works it out for a model and the answer, empty when nothing was asked; may take seconds and is called on a thread
 *                 of its own; throws when it cannot be done, with a message that says what to do
 */
public record Proposal(String name, ModelSection section, Optional<Question> question, BiFunction<ModelFile, String, Offer> offer) {

    /** What is asked, and an answer to start from. */
    public record Question(String text, String first) { }

    /**
     * What is proposed.
     *
     * @param changed the model with it
     * @param words   what it does, one line
     */
    public record Offer(ModelFile changed, String words) { }
}
