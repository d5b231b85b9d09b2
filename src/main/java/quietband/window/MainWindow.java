package quietband.window;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JFrame;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import quietband.demand.ResidualPoint;
import quietband.model.edit.ModelFile;
import quietband.report.file.NumberFormat;
import quietband.response.ResidualCurves;
import quietband.tuning.cures.Cure;
import quietband.tuning.cures.ValueChange;
import quietband.window.bench.DesignVariant;
import quietband.window.bench.EditOrder;
import quietband.window.bench.EditingBench;
import quietband.window.bench.Recovery;
import quietband.window.bench.RefusedEdit;
import quietband.window.card.AllowedErrorCard;
import quietband.window.card.BandsCard;
import quietband.window.card.CausesCard;
import quietband.window.card.InfluenceCard;
import quietband.window.card.ModesCard;
import quietband.window.card.MonteCarloCard;
import quietband.window.card.NeededCard;
import quietband.window.card.NoiseCard;
import quietband.window.card.PathCard;
import quietband.window.card.SketchCard;
import quietband.window.card.TravelCard;
import quietband.window.card.YieldCard;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.BackgroundMonteCarlo;
import quietband.window.work.DesignView;
import quietband.window.work.LatestTask;
import quietband.window.work.MonteCarloProgress;
import quietband.window.work.Proposal;
import quietband.window.work.Proposals;
import quietband.window.work.VariantComparison;
import quietband.window.work.WindowWorker;

/** The window: takes what the desk and the other workers tell, shows it, and hands on what is asked for. On the event thread. */
final class MainWindow implements WindowWorker.Sink, WindowFrame.Calls {

    private static final long UNITS = 4096;

    private final WindowFrame parts;
    private final List<MonteCarloCard> scatter;
    private final MenuActions actions;
    private final Recovery recovery;
    private final LatestTask<EditingBench> keeping;
    private final WindowWorker desk;
    private final VariantComparison comparison;
    private final BackgroundMonteCarlo draws;
    private final Proposals proposals;
    private Theme theme;
    private DesignView view;
    private volatile long shown;
    private BackgroundFigures figures;
    private MonteCarloProgress scattering;
    private Map<String, VariantComparison.Compared> compared = Map.of();
    private Proposals.Made made;
    private String variantsShown = "";
    private boolean comparing;
    private boolean holding;
    private Path opened;

    /**
     * Builds the window, not yet visible.
     *
     * @param recoveryFolder where unsaved work is kept
     * @param version        of the program, for reports
     * @param asker          puts questions; null for dialogs
     */
    MainWindow(EditingBench start, Theme theme, Path recoveryFolder, String version, Questions asker) {
        this.theme = theme;
        scatter = List.of(new BandsCard(theme), new YieldCard(theme), new InfluenceCard(theme));
        parts = new WindowFrame(theme, Map.of(
            Role.PLATFORM, List.of(new TravelCard(theme), new ModesCard(theme), new SketchCard(theme), new NeededCard(theme)),
            Role.CANCELLATION, List.of(new PathCard(theme), new CausesCard(theme), new AllowedErrorCard(theme), new NoiseCard(theme)),
            Role.TOLERANCE, List.copyOf(scatter)), this);
        recovery = new Recovery(recoveryFolder);
        opened = start.variant().path();
        keeping = new LatestTask<>("recovery", this::keep, this::trouble);
        comparison = new VariantComparison(SwingUtilities::invokeLater, this::show, this::trouble);
        draws = new BackgroundMonteCarlo(UNITS, SwingUtilities::invokeLater, this::show, this::trouble);
        proposals = new Proposals(SwingUtilities::invokeLater, this::show, this::notOffered);
        actions = new MenuActions(this, asker == null ? new DialogQuestions(frame().getRootPane()) : asker, version);
        frame().setJMenuBar(actions.menu());
        frame().addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                actions.close();
            }

            @Override
            public void windowClosed(WindowEvent e) {
                stop();
            }
        });
        desk = new WindowWorker(start, SwingUtilities::invokeLater, this);
    }

    private void stop() {
        desk.close();
        keeping.close();
        comparison.close();
        draws.close();
        proposals.close();
    }

    JFrame frame() {
        return parts.frame;
    }

    WindowFrame parts() {
        return parts;
    }

    DesignView view() {
        return view;
    }

    /** Number of the view that is shown; from any thread. */
    long shownSerial() {
        return shown;
    }

    /** The file of the first variant, under which unsaved work is kept. */
    Path opened() {
        return opened;
    }

    BackgroundFigures figures() {
        return figures;
    }

    MonteCarloProgress scattering() {
        return scattering;
    }

    Theme theme() {
        return theme;
    }

    Recovery recovery() {
        return recovery;
    }

    /** Whether all that was asked for is done and shown, the Monte Carlo apart. */
    boolean idle() {
        return desk.idle() && keeping.idle() && comparison.idle() && proposals.idle() && figures != null && figures.of(view)
            && figures.gaps().isPresent();
    }

    @Override
    public void submit(EditOrder order) {
        desk.submit(order);
    }

    @Override
    public void attempt(Cure cure) {
        submit(EditOrder.of(b -> {
            ModelFile changed = b.model();
            for (ValueChange s : cure.settings()) {
                changed = changed.withNumber(s.of(), s.holds());
            }
            return b.take("cure: " + cure.words(), "", changed);
        }));
    }

    @Override
    public void run(Proposal proposal) {
        actions.run(proposal);
    }

    @Override
    public void open(Role r) {
        parts.open(r);
    }

    @Override
    public void axis(int index) {
        parts.chart.axis(index);
        parts.axes.select(index);
    }

    /** Changes colours and sizes at once. */
    void theme(Theme changed) {
        theme = changed;
        parts.theme(changed);
    }

    void status(String text, boolean bad) {
        parts.status(text, bad);
    }

    private void keep(EditingBench bench) {
        recovery.keep(bench);
    }

    private void trouble(RuntimeException e) {
        SwingUtilities.invokeLater(() -> status(RefusedEdit.of(EditOrder.of(b -> b), e).why(), true));
    }

    /** Offers what was left unsaved by a window that did not end well. */
    void offerRecovery() {
        holding = true;
        Recovery.Kept kept = recovery.kept(opened);
        kept.setAside().ifPresent(file -> status("unsaved work that was kept is damaged and cannot be restored; it is set aside as " + file,
            true));
        actions.offerRecovery(kept.scene());
        holding = false;
        if (view != null) {
            keeping.give(view.bench());
        }
    }

    @Override
    public void show(DesignView next) {
        view = next;
        parts.strip.show(next);
        parts.chart.show(next);
        parts.verdict.pending();
        parts.values.show(next.values());
        variants();
        actions.show(next.bench());
        Path now = next.bench().variants().get(0).path();
        if (!now.equals(opened)) {
            opened = now;
            holding = true;
            SwingUtilities.invokeLater(this::offerRecovery);
        }
        if (!holding && next.serial() > 1) {
            keeping.give(next.bench());
        }
        comparison.of(next);
        draws.draw(next, false);
        String title = next.model().design().title();
        frame().setTitle((next.bench().unsaved() ? "\u2022 " : "") + (title.isEmpty() ? "" : title + " \u2013 ")
            + next.bench().variant().path().getFileName() + " \u2013 quietband");
        status("", false);
        shown = next.serial();
    }

    /** A button for each variant, with its margin once it is known. */
    private void variants() {
        List<DesignVariant> all = view.bench().variants();
        String now = all.size() + " " + view.bench().current() + " " + theme + all.stream().map(v -> v.name() + view.bench().unsaved(v)
            + Optional.ofNullable(compared.get(v.name())).map(VariantComparison.Compared::marginDb).orElse(0.0)).toList();
        if (now.equals(variantsShown)) {
            return;
        }
        variantsShown = now;
        parts.variants.removeAll();
        for (int i = 0; i < all.size(); i++) {
            int index = i;
            DesignVariant v = all.get(i);
            String margin = Optional.ofNullable(compared.get(v.name())).filter(c -> !Double.isNaN(c.marginDb()) && all.size() > 1)
                .map(c -> NumberFormat.text(" %+.2f dB", c.marginDb())).orElse("");
            JToggleButton b = new JToggleButton(v.name() + margin + (view.bench().unsaved(v) ? " \u2022" : ""),
                i == view.bench().current());
            b.setName("variant:" + v.name());
            b.setFont(theme.font(java.awt.Font.PLAIN, 12));
            b.setToolTipText(v.path().getFileName() + (view.bench().unsaved(v) ? ", not saved" : ""));
            b.addActionListener(e -> submit(EditOrder.of(x -> x.look(index))));
            parts.variants.add(b);
        }
        parts.variants.revalidate();
        parts.variants.repaint();
    }

    @Override
    public void show(BackgroundFigures next) {
        boolean first = figures == null;
        figures = next;
        if (first) {
            ResidualPoint w = next.assessment().verdict(next.assessment().fullest()).worst();
            axis(w.axis().equals("vector") ? ResidualCurves.VECTOR : "xyz".indexOf(w.axis()));
        }
        parts.strip.show(next);
        parts.chart.show(next);
        if (next.gaps().isEmpty() && next.details().isPresent()) {
            parts.role.show(next);
        }
        if (next.of(view)) {
            parts.verdict.show(next);
        }
    }

    private void show(Map<String, VariantComparison.Compared> next) {
        compared = next;
        variants();
        beside();
    }

    private void show(MonteCarloProgress next) {
        scattering = next;
        scatter.forEach(c -> c.show(next));
    }

    /** Whether units are being drawn right now; from any thread. */
    boolean drawing() {
        return draws.working();
    }

    /** Draws units from now on, or stops. */
    void draw() {
        if (draws.going()) {
            draws.stop();
            status("Drawing stopped; what was drawn stays.", false);
        } else {
            open(Role.TOLERANCE);
            draws.draw(view, true);
            status("Drawing units; the window stays live. F9 stops.", false);
        }
    }

    /** Shows the curves of the other variants beside this one's, or no more. */
    void compare() {
        comparing = !comparing;
        String words = compared.isEmpty() ? "There is no other variant yet: Ctrl+D keeps one."
            : "The other variants are shown beside this one.";
        status(comparing ? words : "", false);
        beside();
    }

    private void beside() {
        Map<String, ResidualCurves> curves = new LinkedHashMap<>();
        if (comparing) {
            compared.forEach((name, c) -> curves.put(name, c.curves()));
        }
        if (made != null) {
            curves.put("proposed by " + made.name(), made.compared().curves());
        }
        parts.chart.compare(curves);
    }

    /** Runs a command on the model in view. */
    void run(Proposal proposal, Optional<String> answer) {
        made = null;
        parts.offer.running(proposal.name());
        proposals.run(proposal, view, answer);
    }

    private void show(Proposals.Made next) {
        made = next;
        parts.offer.show(next.words());
        beside();
    }

    private void notOffered(RuntimeException e) {
        parts.offer.away();
        status(RefusedEdit.of(EditOrder.of(b -> b), e).why(), true);
    }

    @Override
    public void settle(boolean taken) {
        Proposals.Made settled = made;
        made = null;
        parts.offer.away();
        beside();
        if (taken && settled != null) {
            submit(EditOrder.of(b -> {
                if (!b.model().text().equals(settled.view().model().text())) {
                    throw new IllegalArgumentException("the model changed since " + settled.name() + " was run; run it again");
                }
                return b.take(settled.name(), settled.offer().changed(), settled.files());
            }));
        }
    }

    @Override
    public void refused(RefusedEdit refusal) {
        if (!refusal.about().isEmpty() && parts.values.shows(refusal.about())) {
            parts.values.refused(refusal);
            status("Not accepted: the last good result stays.", true);
        } else {
            status(refusal.why(), true);
        }
        if (refusal.disk()) {
            actions.changedOnDisk(refusal.why());
        }
    }
}
