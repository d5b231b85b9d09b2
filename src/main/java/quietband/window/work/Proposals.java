package quietband.window.work;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import quietband.demand.ResidualPoint;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.window.bench.ModelSection;

/** Runs the commands that change a design away from the event thread, and keeps what they propose until it is settled. */
public final class Proposals implements AutoCloseable {

    private final Executor shown;
    private final Consumer<Made> sink;
    private final LatestTask<Asked> working;

    private static final List<Proposal> ALL = List.of(
        new Proposal("springs", ModelSection.PLATFORM, asked("Natural frequency wanted on every axis:", "90 Hz"), DesignChanges::springs),
        new Proposal("filter", ModelSection.CANCELLATION,
            asked("How many taps, and what counts: flat (least squares), limit or noise?", "16 flat"), DesignChanges::filter),
        new Proposal("fit", ModelSection.PLATFORM, asked("File; what it holds; which numbers are to be found:",
            "measured.csv; transmissibility; platform.springs.stiffness, platform.springs.damping"), DesignChanges::fit),
        new Proposal("orient", ModelSection.RESONATOR, Optional.empty(), (model, answer) -> DesignChanges.orient(model)));

    private static Optional<Proposal.Question> asked(String text, String first) {
        return Optional.of(new Proposal.Question(text, first));
    }

    /** Every command that can be run from the window. */
    public static List<Proposal> all() {
        return ALL;
    }

    private record Asked(Proposal proposal, DesignView view, String answer) { }

    /**
     * A proposal that is ready.
     *
     * @param name     of the command
     * @param view     what it was worked out for
     * @param offer    the changed model
     * @param compared its curves and verdict
     */
    public record Made(String name, DesignView view, Proposal.Offer offer, VariantComparison.Compared compared) {

        /** What it does, and what becomes of the worst point. */
        public String words() {
            ResidualPoint w = compared.assessment().verdict(compared.assessment().fullest()).worst();
            String margin = Double.isNaN(w.marginDb()) ? ""
                : NumberFormat.text(" (%s %s)", QuantityText.db(Math.abs(w.marginDb())),
                w.marginDb() < 0 ? "over" : "to spare");
            return name + ": " + offer.words() + ". Worst then " + QuantityText.ppb(w.residualPerG()) + " ppb/g at "
                + QuantityText.hz(w.frequencyHz())
                + margin + ".";
        }

        /** Files the changed model refers to that are new, or other than those the model read before. */
        public Map<String, byte[]> files() {
            Map<String, byte[]> before = view.model().files();
            Map<String, byte[]> files = new TreeMap<>(offer.changed().files());
            files.entrySet().removeIf(e -> Arrays.equals(e.getValue(), before.get(e.getKey())));
            return files;
        }
    }

    public Proposals(Executor shown, Consumer<Made> sink, Consumer<RuntimeException> trouble) {
        this.shown = shown;
        this.sink = sink;
        this.working = new LatestTask<>("proposal", this::work, e -> shown.execute(() -> trouble.accept(e)));
    }

    /** Runs a command on a view. */
    public void run(Proposal proposal, DesignView view, Optional<String> answer) {
        working.give(new Asked(proposal, view, answer.orElse("")));
    }

    public boolean idle() {
        return working.idle();
    }

    private void work(Asked asked) {
        Proposal.Offer offer = asked.proposal().offer().apply(asked.view().model(), asked.answer());
        Made made = new Made(asked.proposal().name(), asked.view(), offer, VariantComparison.Compared.of(offer.changed()));
        shown.execute(() -> sink.accept(made));
    }

    /** Ends the thread. */
    @Override
    public void close() {
        working.close();
    }
}
