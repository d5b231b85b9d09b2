package quietband.window;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Font;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import javax.swing.JTextArea;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import quietband.report.Caution;
import quietband.response.StackVerdict;

/**
 * The window: the verdict on top, the values on the left, the band strip and the residual over each other, the cards of the role
 * at hand below, the caution at the foot. Where there is little room the cards share the left side with the values.
 */
final class MainWindow implements Desk.Sink {

    private final JFrame frame = new JFrame();
    private final Desk desk;
    private final Recovery recovery;
    private final Latest<Bench> keeping;
    private final VerdictPanel verdict;
    private final ValuesPanel values;
    private final BandStrip strip;
    private final ResidualChart chart;
    private final RolePanel role;
    private final JPanel bar = new JPanel(new BorderLayout());
    private final JPanel variants = new JPanel(new FlowLayout(FlowLayout.LEFT, 2, 0));
    private final JPanel roles = new JPanel(new FlowLayout(FlowLayout.RIGHT, 2, 0));
    private final JPanel centre = new JPanel(new BorderLayout());
    private final JPanel picture = new JPanel(new BorderLayout());
    private final JTabbedPane side = new JTabbedPane();
    private final JPanel left = new JPanel(new BorderLayout());
    private final JLabel status = new JLabel(" ");
    private final JTextArea caution = new JTextArea(Caution.TEXT);
    private final JPanel foot = new JPanel(new BorderLayout());
    private final AxisButtons axes;
    private final Actions actions;
    private Theme theme;
    private View view;
    private Figures figures;
    private Boolean narrow;

    /**
     * Builds the window, not yet visible. On the event thread.
     *
     * @param asker puts questions; null for dialogs
     */
    MainWindow(Bench start, Theme theme, Path recoveryFolder, Asker asker) {
        this.theme = theme;
        verdict = new VerdictPanel(theme, this::attempt);
        values = new ValuesPanel(theme, this::submit);
        strip = new BandStrip(theme);
        chart = new ResidualChart(theme);
        role = new RolePanel(theme, Map.of(Role.PLATFORM, List.of(new TravelCard(theme), new ModesCard(theme), new SketchCard(theme)),
            Role.CORRECTION, List.of(new ModesCard(theme)), Role.TOLERANCE, List.of(new ModesCard(theme))));
        axes = new AxisButtons(theme, this::axis);
        recovery = new Recovery(recoveryFolder, start.variant().path());
        keeping = new Latest<>("recovery", this::keep, e -> SwingUtilities.invokeLater(() -> status(e.getMessage(), true)));
        actions = new Actions(this, asker == null ? new DialogAsker(frame.getRootPane()) : asker);
        build();
        desk = new Desk(start, SwingUtilities::invokeLater, this);
    }

    private void build() {
        frame.setName("quietband");
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                actions.close();
            }

            @Override
            public void windowClosed(WindowEvent e) {
                desk.close();
                keeping.close();
            }
        });
        ButtonGroup group = new ButtonGroup();
        for (Role r : Role.values()) {
            JToggleButton b = new JToggleButton(r.title(), r == Role.PLATFORM);
            b.setName("role:" + r.title());
            b.addActionListener(e -> open(r));
            group.add(b);
            roles.add(b);
        }
        bar.add(variants, BorderLayout.CENTER);
        bar.add(roles, BorderLayout.EAST);
        picture.add(strip, BorderLayout.NORTH);
        picture.add(chart.panel(), BorderLayout.CENTER);
        chart.panel().setLayout(null);
        chart.panel().add(axes);
        chart.panel().addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                place();
            }
        });
        centre.add(picture, BorderLayout.CENTER);
        status.setName("status");
        caution.setName("caution");
        caution.setEditable(false);
        caution.setFocusable(false);
        caution.setLineWrap(true);
        caution.setWrapStyleWord(true);
        foot.add(caution, BorderLayout.CENTER);
        foot.add(status, BorderLayout.NORTH);
        JPanel head = new JPanel(new BorderLayout());
        head.add(bar, BorderLayout.NORTH);
        head.add(verdict, BorderLayout.CENTER);
        JPanel all = new JPanel(new BorderLayout());
        all.add(head, BorderLayout.NORTH);
        all.add(left, BorderLayout.WEST);
        all.add(centre, BorderLayout.CENTER);
        all.add(foot, BorderLayout.SOUTH);
        frame.setContentPane(all);
        frame.setJMenuBar(actions.menu());
        frame.addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                arrange();
            }
        });
        values.open(Section.PLATFORM);
        dress();
        frame.setPreferredSize(new Dimension(1280, 800));
        frame.setMinimumSize(new Dimension(640, 420));
        frame.pack();
        arrange();
    }

    private void dress() {
        foot.setBorder(BorderFactory.createEmptyBorder(theme.px(1), theme.px(8), theme.px(3), theme.px(8)));
        caution.setFont(theme.font(Font.PLAIN, 11));
        caution.setForeground(theme.ink());
        caution.setBackground(theme.ground());
        status.setFont(theme.font(Font.PLAIN, 12));
        left.setPreferredSize(new Dimension(theme.px(304), 10));
        picture.setBorder(BorderFactory.createEmptyBorder(theme.px(2), 0, 0, theme.px(6)));
        role.setPreferredSize(new Dimension(10, theme.px(196)));
        role.setBorder(BorderFactory.createEmptyBorder(theme.px(4), theme.px(4), theme.px(4), theme.px(8)));
    }

    /** Puts the cards below the picture, or beside the values where there is little room. */
    private void arrange() {
        boolean little = frame.getWidth() < theme.px(1000) || frame.getHeight() < theme.px(680);
        caution.setText(little ? Caution.PREDICTION + " Shaker and shock tests can injure: read the whole caution, F2." : Caution.TEXT);
        if (narrow != null && narrow == little) {
            return;
        }
        narrow = little;
        left.removeAll();
        centre.remove(role);
        side.removeAll();
        role.narrow(little);
        if (little) {
            side.addTab("Values", values);
            side.addTab(role.role().title(), role);
            left.add(side, BorderLayout.CENTER);
        } else {
            left.add(values, BorderLayout.CENTER);
            centre.add(role, BorderLayout.SOUTH);
        }
        frame.revalidate();
        place();
    }

    private void place() {
        Gutter gutter = Gutter.of(theme, chart.panel().getWidth());
        axes.setBounds(theme.px(4), theme.px(8), gutter.left() - theme.px(70), axes.getPreferredSize().height);
        axes.setSize(axes.getPreferredSize());
    }

    JFrame frame() {
        return frame;
    }

    View view() {
        return view;
    }

    Figures figures() {
        return figures;
    }

    Theme theme() {
        return theme;
    }

    ValuesPanel values() {
        return values;
    }

    ResidualChart chart() {
        return chart;
    }

    Recovery recovery() {
        return recovery;
    }

    /** Whether all that was asked for is done and shown. */
    boolean idle() {
        return desk.idle() && keeping.idle() && figures != null && figures.view() == view && figures.gaps().isPresent();
    }

    void submit(Order order) {
        desk.submit(order);
    }

    private void attempt(quietband.tuning.Cure cure) {
        submit(Order.of(b -> {
            quietband.model.ModelFile changed = b.model();
            for (quietband.tuning.Setting s : cure.settings()) {
                changed = changed.withNumber(s.of(), s.holds());
            }
            return b.take("cure: " + cure.words(), "", changed);
        }));
    }

    /** Shows the cards and values of a role. */
    void open(Role r) {
        role.open(r);
        values.open(r.section());
        if (Boolean.TRUE.equals(narrow)) {
            side.setTitleAt(1, r.title());
        }
        for (java.awt.Component c : roles.getComponents()) {
            ((JToggleButton) c).setSelected(c.getName().equals("role:" + r.title()));
        }
    }

    /** @param index 0 to 2, or 3 for the vector */
    void axis(int index) {
        chart.axis(index);
        axes.select(index);
    }

    /** Changes colours and sizes at once. */
    void theme(Theme changed) {
        theme = changed;
        changed.apply();
        verdict.theme(changed);
        values.theme(changed);
        strip.theme(changed);
        chart.theme(changed);
        role.theme(changed);
        axes.theme(changed);
        dress();
        narrow = null;
        arrange();
        SwingUtilities.updateComponentTreeUI(frame);
        place();
    }

    /** A line for the person at the window. */
    void status(String text, boolean bad) {
        status.setText(text.isEmpty() ? " " : text);
        status.setToolTipText(text);
        status.setForeground(bad ? theme.bad() : theme.faint());
    }

    private void keep(Bench bench) {
        recovery.keep(bench);
    }

    @Override
    public void show(View next) {
        boolean first = view == null;
        view = next;
        strip.show(next);
        chart.show(next);
        verdict.pending();
        values.show(next.values());
        variants();
        actions.show(next.bench());
        keeping.give(next.bench());
        frame.setTitle((next.bench().unsaved() ? "\u2022 " : "") + (next.model().design().title().isEmpty() ? ""
            : next.model().design().title() + " \u2013 ") + next.bench().variant().path().getFileName() + " \u2013 quietband");
        if (first) {
            status("", false);
        }
    }

    private void variants() {
        List<Variant> all = view.bench().variants();
        variants.removeAll();
        for (int i = 0; i < all.size(); i++) {
            int index = i;
            JToggleButton b = new JToggleButton(all.get(i).name() + (view.bench().unsaved(all.get(i)) ? " \u2022" : ""),
                i == view.bench().current());
            b.setName("variant:" + all.get(i).name());
            b.addActionListener(e -> submit(Order.of(x -> x.look(index))));
            variants.add(b);
        }
        variants.revalidate();
        variants.repaint();
    }

    @Override
    public void show(Figures next) {
        boolean first = figures == null;
        figures = next;
        if (first) {
            follow();
        }
        strip.show(next);
        chart.show(next);
        role.show(next);
        if (next.view() == view) {
            verdict.show(next);
        }
    }

    /** Shows the axis that is worst. */
    private void follow() {
        StackVerdict.Worst w = figures.assessment().verdict(figures.assessment().fullest()).worst();
        axis(w.axis().equals("vector") ? 3 : "xyz".indexOf(w.axis()));
    }

    @Override
    public void refused(Refusal refusal) {
        if (!refusal.about().isEmpty() && values.shows(refusal.about())) {
            values.refused(refusal);
            status("Not taken over: the last good result stays.", true);
        } else {
            status(refusal.why(), true);
        }
        if (refusal.disk()) {
            actions.changedOnDisk(refusal.why());
        }
    }
}
