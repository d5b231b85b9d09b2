package quietband.window;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import quietband.report.Words;
import quietband.response.StackVerdict;

/** Runs the commands that change a design away from the event thread, and keeps what they propose until it is settled. */
final class Proposals implements AutoCloseable {

    private final Executor shown;
    private final Consumer<Made> sink;
    private final Latest<Asked> working;

    /** Every command that can be run from the window. */
    static List<Proposal> all() {
        return List.of(new SpringsProposal(), new FilterProposal(), new FitProposal(), new OrientProposal());
    }

    private record Asked(Proposal proposal, View view, String answer) { }

    /**
     * A proposal that is ready.
     *
     * @param name     of the command
     * @param view     what it was worked out for
     * @param offer    the changed model
     * @param compared its curves and verdict
     */
    record Made(String name, View view, Proposal.Offer offer, Comparison.Compared compared) {

        /** What it does, and what becomes of the worst point. */
        String words() {
            StackVerdict.Worst w = compared.assessment().verdict(compared.assessment().fullest()).worst();
            String margin = Double.isNaN(w.marginDb()) ? "" : String.format(Locale.ROOT, " (%s %s)", Words.db(Math.abs(w.marginDb())),
                w.marginDb() < 0 ? "over" : "to spare");
            return name + ": " + offer.words() + ". Worst then " + Words.ppb(w.residualPerG()) + " ppb/g at " + Words.hz(w.frequencyHz())
                + margin + ".";
        }

        /** Files the changed model refers to that are new, or other than those the model read before. */
        Map<String, byte[]> files() {
            Map<String, byte[]> before = view.model().files();
            Map<String, byte[]> files = new TreeMap<>(offer.changed().files());
            files.entrySet().removeIf(e -> Arrays.equals(e.getValue(), before.get(e.getKey())));
            return files;
        }
    }

    Proposals(Executor shown, Consumer<Made> sink, Consumer<RuntimeException> trouble) {
        this.shown = shown;
        this.sink = sink;
        this.working = new Latest<>("proposal", this::work, e -> shown.execute(() -> trouble.accept(e)));
    }

    /** Runs a command on a view. */
    void run(Proposal proposal, View view, Optional<String> answer) {
        working.give(new Asked(proposal, view, answer.orElse("")));
    }

    boolean idle() {
        return working.idle();
    }

    private void work(Asked asked) {
        Proposal.Offer offer = asked.proposal().offer(asked.view().model(), asked.answer());
        Made made = new Made(asked.proposal().name(), asked.view(), offer, Comparison.Compared.of(offer.changed()));
        shown.execute(() -> sink.accept(made));
    }

    /** Ends the thread. */
    @Override
    public void close() {
        working.close();
    }
}
