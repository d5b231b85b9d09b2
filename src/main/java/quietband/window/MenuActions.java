package quietband.window;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentReport;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.Caution;
import quietband.spectrum.LogGrid;
import quietband.study.assess.DesignAssessment;
import quietband.window.bench.EditOrder;
import quietband.window.bench.EditStep;
import quietband.window.bench.EditingBench;
import quietband.window.bench.ModelStore;
import quietband.window.work.BackgroundFigures;
import quietband.window.work.Proposal;
import quietband.window.work.Proposals;
import quietband.window.work.WindowWorker;

/** Everything that can be done from the menu, each with its key. */
final class MenuActions {

    private static final int CTRL = InputEvent.CTRL_DOWN_MASK;
    private static final int SHIFT = InputEvent.SHIFT_DOWN_MASK;
    private static final int ALT = InputEvent.ALT_DOWN_MASK;

    private final MainWindow window;
    private final Questions asker;
    private final String version;
    private final JMenuBar bar = new JMenuBar();
    private final StringBuilder keys = new StringBuilder();
    private Action undo;
    private Action redo;

    MenuActions(MainWindow window, Questions asker, String version) {
        this.window = window;
        this.asker = asker;
        this.version = version;
        file();
        edit();
        variant();
        run();
        look();
        JMenu help = menu("Help", 'H');
        item(help, "Keys", KeyEvent.VK_F1, 0, () -> asker.tell("Keys", keys.toString()));
        item(help, "Caution", KeyEvent.VK_F2, 0, () -> asker.tell("Caution", Caution.TEXT + "\n\n" + Caution.assumptions(window.view()
            .model().design())));
    }

    JMenuBar menu() {
        return bar;
    }

    private JMenu menu(String name, char mnemonic) {
        JMenu menu = new JMenu(name);
        menu.setMnemonic(mnemonic);
        bar.add(menu);
        return menu;
    }

    private Action item(JMenu menu, String name, int code, int modifiers, Runnable action) {
        Action a = new AbstractAction(name) {
            private static final long serialVersionUID = 1;

            @Override
            public void actionPerformed(ActionEvent e) {
                action.run();
            }
        };
        if (code != 0) {
            KeyStroke key = KeyStroke.getKeyStroke(code, modifiers);
            a.putValue(Action.ACCELERATOR_KEY, key);
            String mods = InputEvent.getModifiersExText(modifiers);
            keys.append(mods.isEmpty() ? "" : mods + "+").append(KeyEvent.getKeyText(code)).append("   ").append(name).append('\n');
        }
        menu.add(a).setName("menu:" + name);
        return a;
    }

    private void file() {
        JMenu menu = menu("File", 'F');
        item(menu, "Save", KeyEvent.VK_S, CTRL, () -> save(false));
        item(menu, "Read again from disk", KeyEvent.VK_R, CTRL, () -> window.submit(EditOrder.of(ModelStore::reload)));
        item(menu, "Open \u2026", KeyEvent.VK_O, CTRL, this::open);
        menu.addSeparator();
        item(menu, "Export picture \u2026", KeyEvent.VK_E, CTRL, this::picture);
        item(menu, "Export report \u2026", KeyEvent.VK_E, CTRL | SHIFT, this::report);
        menu.addSeparator();
        item(menu, "Close", KeyEvent.VK_W, CTRL, this::close);
    }

    private void edit() {
        JMenu menu = menu("Edit", 'E');
        undo = item(menu, "Undo", KeyEvent.VK_Z, CTRL, () -> window.submit(EditOrder.of(EditingBench::undo)));
        redo = item(menu, "Redo", KeyEvent.VK_Z, CTRL | SHIFT, () -> window.submit(EditOrder.of(EditingBench::redo)));
        menu.addSeparator();
        item(menu, "Find a value", KeyEvent.VK_F, CTRL, () -> window.parts().values.search());
    }

    private void variant() {
        JMenu menu = menu("Variant", 'V');
        item(menu, "Keep as variant \u2026", KeyEvent.VK_D, CTRL, this::keep);
        item(menu, "Next variant", KeyEvent.VK_PAGE_DOWN, CTRL,
            () -> window.submit(EditOrder.of(b -> b.look((b.current() + 1) % b.variants().size()))));
        item(menu, "Compare variants", KeyEvent.VK_B, CTRL, window::compare);
        item(menu, "Drop variant", 0, 0, () -> window.submit(EditOrder.of(b -> b.drop(b.current()))));
    }

    private void run() {
        JMenu menu = menu("Run", 'R');
        item(menu, "Draw units", KeyEvent.VK_F9, 0, window::draw);
        menu.addSeparator();
        int key = KeyEvent.VK_F5;
        for (Proposal p : Proposals.all()) {
            item(menu, p.name() + (p.question().isPresent() ? " \u2026" : ""), key++, 0, () -> run(p));
        }
    }

    /** Asks what a command has to know and runs it. */
    void run(Proposal p) {
        Optional<String> answer = p.question().flatMap(q -> asker.line(p.name(), q.text(), q.first()));
        if (p.question().isEmpty() || answer.isPresent()) {
            window.run(p, answer);
        }
    }

    private void look() {
        JMenu menu = menu("View", 'I');
        int key = KeyEvent.VK_1;
        for (Role r : Role.values()) {
            item(menu, r.title(), key++, ALT, () -> window.open(r));
        }
        menu.addSeparator();
        String[] axes = {"Axis x", "Axis y", "Axis z", "Vector"};
        for (int i = 0; i < axes.length; i++) {
            int axis = i;
            item(menu, axes[i], KeyEvent.VK_1 + i, CTRL, () -> window.axis(axis));
        }
        menu.addSeparator();
        item(menu, "Read the curves further left", KeyEvent.VK_LEFT, ALT, () -> window.parts().chart.read(-5));
        item(menu, "Read the curves further right", KeyEvent.VK_RIGHT, ALT, () -> window.parts().chart.read(5));
        item(menu, "Hide cursor", KeyEvent.VK_DOWN, ALT, () -> window.parts().chart.reading().away());
        menu.addSeparator();
        item(menu, "Light or dark", KeyEvent.VK_L, CTRL, () -> window.theme(window.theme().other()));
        item(menu, "Larger", KeyEvent.VK_EQUALS, CTRL, () -> window.theme(window.theme().zoomed(1)));
        item(menu, "Smaller", KeyEvent.VK_MINUS, CTRL, () -> window.theme(window.theme().zoomed(-1)));
    }

    /** Shows what can be undone now. */
    void show(EditingBench bench) {
        undo.setEnabled(bench.undoable().isPresent());
        undo.putValue(Action.NAME, bench.undoable().map(s -> "Undo: " + s.label()).orElse("Undo"));
        redo.setEnabled(bench.redoable().isPresent());
        redo.putValue(Action.NAME, bench.redoable().map(s -> "Redo: " + s.label()).orElse("Redo"));
    }

    private void save(boolean even) {
        window.submit(EditOrder.of(b -> {
            EditingBench saved = ModelStore.save(b, even);
            SwingUtilities.invokeLater(() -> SwingUtilities.invokeLater(() -> window.status("Saved " + b.variant().path() + ".", false)));
            return saved;
        }));
    }

    private void open() {
        asker.file("Open a model", window.view().bench().variant().path(), false).ifPresent(path -> {
            Path left = window.opened();
            if (!window.view().bench().unsaved() || asker.choose("Unsaved changes", "Some changes are not saved.", "Stay",
                "Open without saving") == 1) {
                window.submit(EditOrder.of(b -> {
                    EditingBench opened = EditingBench.of(ModelFile.read(path));
                    window.recovery().forget(left);
                    return opened;
                }));
            }
        });
    }

    private void picture() {
        BackgroundFigures figures = window.figures();
        Path model = figures.view().bench().variant().path();
        asker.file("Export the picture as .svg or .png", model.resolveSibling(stem(model) + ".svg"), true)
            .ifPresent(to -> aside("Wrote " + to, () -> new PictureFile(figures, window.parts().chart.axis()).write(to)));
    }

    private void report() {
        ModelFile file = window.view().model();
        Path target = Path.of("results", stem(file.path()), "assess");
        asker.line("Export report", "Folder for the report and its tables:", target.toString()).map(Path::of).ifPresent(to ->
            aside("Wrote " + to.resolve("report.html"), () -> {
                double[] f = LogGrid.between(WindowWorker.POINTS, file.design().requirement().fromHz(), file.design().requirement().toHz());
                Provenance from = Provenance.of("assess", version, file, 1);
                try (ResultDirectory directory = ResultDirectory.prepare(to, from.mark(), from.read())) {
                    AssessmentReport.of(DesignAssessment.of(file, f, 1, directory.target()), from).writeTo(directory, 1);
                    directory.commit();
                }
            }));
    }

    /** Does something away from the event thread and says how it ended. */
    private void aside(String done, Runnable work) {
        window.submit(EditOrder.of(b -> {
            work.run();
            SwingUtilities.invokeLater(() -> window.status(done, false));
            return b;
        }));
    }

    private static String stem(Path path) {
        return path.getFileName().toString().replaceAll("\\.ya?ml$", "");
    }

    /** The file in the way is not what was read: asks what to do. */
    void changedOnDisk(String why) {
        int answer = asker.choose("The file changed", why + ". Overwrite it, or read it again and give up "
            + "what is unsaved? Reading can be undone.", "Leave it", "Overwrite it", "Read it again");
        if (answer == 1) {
            save(true);
        } else if (answer == 2) {
            window.submit(EditOrder.of(ModelStore::reload));
        }
    }

    private void keep() {
        asker.line("Keep as variant", "Name of the variant:", "variant " + window.view().bench().variants().size()).ifPresent(name -> {
            Path first = window.view().bench().variants().get(0).path();
            String tail = name.strip().replaceAll("[^\\p{L}\\p{N}-]+", "-");
            window.submit(EditOrder.of(b -> b.keep(name, first.resolveSibling(stem(first) + "-" + tail + ".yaml"))));
        });
    }

    /** Asks whether unsaved work that was found is to be taken up again. */
    void offerRecovery(Optional<EditStep.Scene> kept) {
        if (kept.isPresent()) {
            int answer = asker.choose("Unsaved work", "Unsaved work on this model was found; the window did not end well. Restore it "
                + "? That can be undone.", "Restore it", "Forget it");
            if (answer == 0) {
                window.submit(EditOrder.of(b -> b.recovered(kept.get())));
            } else if (answer == 1) {
                window.recovery().forget(window.opened());
            }
        }
    }

    /** Closes the window; asks first when something is unsaved. */
    void close() {
        if (window.view() != null && window.view().bench().unsaved()) {
            int answer = asker.choose("Unsaved changes", "Some changes are not saved.", "Stay", "Close without saving");
            if (answer != 1) {
                return;
            }
        }
        window.recovery().forget(window.opened());
        window.frame().dispose();
    }
}
