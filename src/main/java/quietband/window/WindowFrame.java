package quietband.window;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Font;
import java.awt.Rectangle;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import quietband.report.page.Caution;
import quietband.tuning.cures.Cure;
import quietband.window.bench.EditOrder;
import quietband.window.bench.ModelSection;
import quietband.window.card.FigureCard;
import quietband.window.chart.AxisButtons;
import quietband.window.chart.BandLayout;
import quietband.window.chart.BandStrip;
import quietband.window.chart.ResidualChart;
import quietband.window.chart.Theme;
import quietband.window.chart.WrappedText;
import quietband.window.values.ValuesPanel;
import quietband.window.work.Proposal;

/**
 * What stands where: the verdict on top, the values on the left, the band strip and the residual over each other, the cards
 * of the role at hand below, the caution at the foot. Where there is little room the cards share the left side with the values.
 */
final class WindowFrame {

    private static final Dimension FIRST = new Dimension(1280, 800);

    final JFrame frame = new JFrame();
    final VerdictPanel verdict;
    final ValuesPanel values;
    final BandStrip strip;
    final ResidualChart chart;
    final RolePanel role;
    final AxisButtons axes;
    final OfferBar offer;
    final JPanel variants = new JPanel(new FlowLayout(FlowLayout.LEFT, 2, 0));
    final JPanel roles = new JPanel(new FlowLayout(FlowLayout.RIGHT, 2, 0));
    private final JPanel centre = new JPanel(new BorderLayout());
    private final JPanel picture = new JPanel(new BorderLayout());
    private final JTabbedPane side = new JTabbedPane();
    private final JPanel left = new JPanel(new BorderLayout());
    private final JLabel status = new JLabel(" ");
    private final WrappedText caution = new WrappedText("caution", true);
    private final JPanel foot = new JPanel(new BorderLayout());
    private Theme theme;
    private Boolean little;

    /** What the widgets of the frame call. */
    interface Calls {

        /** Something is to be done to the bench. */
        void submit(EditOrder order);

        /** A cure is to be tried. */
        void attempt(Cure cure);

        /** A command is to be run. */
        void run(Proposal proposal);

        /** A role is to be opened. */
        void open(Role role);

        /** An axis is to be shown. */
        void axis(int index);

        /** An offer is taken over, or discarded. */
        void settle(boolean taken);
    }

    WindowFrame(Theme theme, Map<Role, List<FigureCard>> cards, Calls calls) {
        this.theme = theme;
        verdict = new VerdictPanel(theme, calls::attempt);
        values = new ValuesPanel(theme, calls::submit, calls::run);
        strip = new BandStrip(theme);
        chart = new ResidualChart(theme);
        role = new RolePanel(theme, cards);
        axes = new AxisButtons(theme, calls::axis);
        offer = new OfferBar(theme, calls::settle);
        build(calls::open);
    }

    private void build(Consumer<Role> open) {
        frame.setName("quietband");
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        ButtonGroup group = new ButtonGroup();
        for (Role r : Role.values()) {
            JToggleButton b = new JToggleButton(r.title(), r == Role.PLATFORM);
            b.setName("role:" + r.title());
            b.addActionListener(e -> open.accept(r));
            group.add(b);
            roles.add(b);
        }
        JPanel bar = new JPanel(new BorderLayout());
        bar.add(variants, BorderLayout.CENTER);
        bar.add(roles, BorderLayout.EAST);
        picture.add(strip, BorderLayout.NORTH);
        picture.add(chart.panel(), BorderLayout.CENTER);
        chart.panel().add(axes);
        chart.panel().addComponentListener(resized(this::place));
        centre.add(picture, BorderLayout.CENTER);
        status.setName("status");
        foot.add(status, BorderLayout.NORTH);
        foot.add(caution, BorderLayout.CENTER);
        JPanel head = new JPanel(new BorderLayout());
        head.add(bar, BorderLayout.NORTH);
        head.add(verdict, BorderLayout.CENTER);
        head.add(offer, BorderLayout.SOUTH);
        JPanel all = new JPanel(new BorderLayout());
        all.add(head, BorderLayout.NORTH);
        all.add(left, BorderLayout.WEST);
        all.add(centre, BorderLayout.CENTER);
        all.add(foot, BorderLayout.SOUTH);
        frame.setContentPane(all);
        frame.addComponentListener(resized(this::arrange));
        values.open(ModelSection.PLATFORM);
        dress();
        Rectangle screen = frame.getGraphicsConfiguration().getBounds();
        frame.setPreferredSize(new Dimension(Math.min(screen.width, FIRST.width), Math.min(screen.height, FIRST.height)));
        frame.pack();
        arrange();
    }

    private static ComponentAdapter resized(Runnable action) {
        return new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                action.run();
            }
        };
    }

    private void dress() {
        foot.setBorder(BorderFactory.createEmptyBorder(theme.px(1), theme.px(8), theme.px(3), theme.px(8)));
        caution.setFont(theme.font(Font.PLAIN, 11));
        caution.setForeground(theme.ink());
        caution.setBackground(theme.ground());
        status.setFont(theme.font(Font.PLAIN, 12));
        left.setPreferredSize(new Dimension(theme.px(296), 10));
        picture.setBorder(BorderFactory.createEmptyBorder(theme.px(2), 0, 0, theme.px(6)));
        role.setPreferredSize(new Dimension(10, theme.px(196)));
        role.setBorder(BorderFactory.createEmptyBorder(theme.px(4), theme.px(4), theme.px(4), theme.px(8)));
        for (Component c : roles.getComponents()) {
            c.setFont(theme.font(Font.PLAIN, 12));
        }
    }

    /** Puts the cards below the picture, or beside the values where there is little room. */
    void arrange() {
        boolean now = frame.getWidth() < theme.px(1000) || frame.getHeight() < theme.px(640);
        if (little != null && little == now) {
            return;
        }
        little = now;
        caution.setText(now ? Caution.PREDICTION + " Shaker and shock tests can injure: F2 shows the whole caution." : Caution.TEXT);
        left.removeAll();
        centre.remove(role);
        side.removeAll();
        role.narrow(now);
        strip.low(now);
        verdict.brief(now);
        values.brief(now);
        if (now) {
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
        BandLayout gutter = BandLayout.of(theme, chart.panel().getWidth());
        Dimension wanted = axes.getPreferredSize();
        chart.reading().setBounds(0, 0, chart.panel().getWidth(), chart.panel().getHeight());
        axes.setBounds(theme.px(4), theme.px(6), Math.min(wanted.width, gutter.left() - theme.px(62)), wanted.height);
    }

    /** Shows the cards and values of a role. */
    void open(Role r) {
        role.open(r);
        values.open(r.section());
        if (Boolean.TRUE.equals(little)) {
            side.setTitleAt(1, r.title());
        }
        for (Component c : roles.getComponents()) {
            ((JToggleButton) c).setSelected(c.getName().equals("role:" + r.title()));
        }
    }

    /** Changes colours and sizes at once. */
    void theme(Theme changed) {
        theme = changed;
        changed.apply();
        SwingUtilities.updateComponentTreeUI(frame);
        for (JComponent hidden : List.of(values, role, side)) {
            SwingUtilities.updateComponentTreeUI(hidden);
        }
        verdict.theme(changed);
        values.theme(changed);
        strip.theme(changed);
        chart.theme(changed);
        role.theme(changed);
        axes.theme(changed);
        offer.theme(changed);
        dress();
        little = null;
        arrange();
    }

    /** A line for the person at the window. */
    void status(String text, boolean bad) {
        status.setText(text.isEmpty() ? " " : text);
        status.setToolTipText(text.isEmpty() ? null : text);
        status.setForeground(bad ? theme.bad() : theme.ink());
    }
}
