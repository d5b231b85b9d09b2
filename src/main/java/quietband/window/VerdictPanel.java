package quietband.window;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Font;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import quietband.demand.RequirementResult;
import quietband.demand.ResidualPoint;
import quietband.report.assess.GapLine;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.response.verdict.Assessment;
import quietband.tuning.cures.CoverageGap;
import quietband.tuning.cures.Cure;
import quietband.window.chart.Theme;
import quietband.window.chart.WrappedText;
import quietband.window.work.BackgroundFigures;

/** The answer: does it hold, where is it worst, what to change; and a mark for each requirement. */
final class VerdictPanel extends JPanel {

    private static final long serialVersionUID = 1;

    private final JLabel badge = new JLabel("", SwingConstants.CENTER);
    private final JLabel worst = new JLabel();
    private final WrappedText change = new WrappedText("change", false);
    private final JButton attempt = new JButton("Try it");
    private final JPanel asked = new JPanel(new FlowLayout(FlowLayout.LEFT, 6, 0));
    private transient Theme theme;
    private transient BackgroundFigures figures;
    private transient List<RequirementResult> marked = List.of();
    private boolean brief;
    private transient Optional<Cure> cure = Optional.empty();

    /** @param attempts told which cure to try */
    VerdictPanel(Theme theme, Consumer<Cure> attempts) {
        super(new BorderLayout());
        this.theme = theme;
        badge.setName("verdict");
        worst.setName("worst");
        attempt.setName("try");
        asked.setName("asked");
        badge.setOpaque(true);
        attempt.addActionListener(e -> cure.ifPresent(attempts));
        attempt.setMnemonic('T');
        JPanel second = new JPanel(new BorderLayout(8, 0));
        second.add(change, BorderLayout.CENTER);
        JPanel button = new JPanel(new BorderLayout());
        button.add(attempt, BorderLayout.NORTH);
        second.add(button, BorderLayout.EAST);
        JPanel lines = new JPanel(new BorderLayout());
        lines.add(worst, BorderLayout.NORTH);
        lines.add(second, BorderLayout.CENTER);
        lines.add(asked, BorderLayout.SOUTH);
        add(badge, BorderLayout.WEST);
        add(lines, BorderLayout.CENTER);
        theme(theme);
    }

    void theme(Theme changed) {
        theme = changed;
        badge.setFont(theme.font(Font.BOLD, 19));
        worst.setFont(theme.font(Font.BOLD, 13));
        change.setFont(theme.font(Font.PLAIN, 13));
        change.setRows(2);
        change.setPreferredSize(new Dimension(10, 2 * change.getFontMetrics(change.getFont()).getHeight()));
        marked = List.of();
        setBorder(BorderFactory.createEmptyBorder(theme.px(4), theme.px(6), theme.px(4), theme.px(8)));
        badge.setBorder(BorderFactory.createEmptyBorder(0, theme.px(12), 0, theme.px(12)));
        worst.setBorder(BorderFactory.createEmptyBorder(0, theme.px(10), 0, 0));
        change.setBorder(BorderFactory.createEmptyBorder(0, theme.px(10), 0, 0));
        if (figures != null) {
            show(figures);
        }
    }

    /** Leaves the marks out where there is little height: the two lines say what matters. */
    void brief(boolean little) {
        asked.setVisible(!little);
        brief = little;
        badge.setFont(theme.font(Font.BOLD, little ? 15 : 19));
        if (figures != null) {
            show(figures);
        }
    }

    /** Says that the figures are being computed anew. */
    void pending() {
        worst.setForeground(theme.faint());
        change.setForeground(theme.faint());
        attempt.setEnabled(false);
    }

    public void show(BackgroundFigures next) {
        figures = next;
        Assessment a = next.assessment();
        Optional<Boolean> met = a.requirementMet();
        badge.setText(met.isEmpty() ? "NO REQUIREMENT" : met.get() ? "HOLDS" : "DOES NOT HOLD");
        badge.setBackground(met.isEmpty() ? theme.faint() : met.get() ? new Color(0x00694D) : new Color(0xB3122E));
        badge.setForeground(met.isEmpty() && theme.dark() ? Color.BLACK : Color.WHITE);
        worst.setForeground(theme.ink());
        worst.setText(worst(a));
        worst.setToolTipText(worst.getText());
        change.setForeground(theme.ink());
        advise(a);
        change.setToolTipText(change.getText());
        if (!a.requirements().equals(marked)) {
            marked = a.requirements();
            asked.removeAll();
            marked.forEach(r -> asked.add(mark(r)));
            asked.revalidate();
            asked.repaint();
        }
    }

    private String worst(Assessment a) {
        ResidualPoint w = a.verdict(a.fullest()).worst();
        String where = NumberFormat.text("Worst point, %s: %s, %s, %s ppb/g", a.fullest().key(),
            QuantityText.hz(w.frequencyHz()),
            w.axis().equals("vector") ? "vector" : "axis " + w.axis(), QuantityText.ppb(w.residualPerG()));
        if (brief) {
            return "Worst: " + QuantityText.hz(w.frequencyHz()) + ", " + w.axis() + ", " + QuantityText.ppb(w.residualPerG()) + " ppb/g"
                + (Double.isNaN(w.marginDb()) ? "" : ", " + QuantityText.db(Math.abs(w.marginDb()))
                + (w.marginDb() < 0 ? " over" : " spare"));
        }
        return Double.isNaN(w.marginDb()) ? where : where + " of " + QuantityText.ppb(w.limitPerG()) + " allowed, "
            + QuantityText.db(Math.abs(w.marginDb())) + (w.marginDb() < 0 ? " over" : " to spare");
    }

    private void advise(Assessment a) {
        Optional<CoverageGap> gap = figures.gaps().flatMap(g -> g.stream().filter(x -> x.stack() == a.fullest()).findFirst());
        cure = gap.flatMap(CoverageGap::cure);
        attempt.setVisible(cure.isPresent());
        attempt.setEnabled(cure.isPresent());
        Optional<RequirementResult> broken = a.requirements().stream().filter(r -> !r.met() && !r.name().equals("residual")).findFirst();
        if (gap.isPresent()) {
            change.setText(brief ? briefly(GapLine.of(gap.get(), true)) : words(GapLine.of(gap.get(), true)));
        } else if (broken.isPresent()) {
            change.setText("To change: " + RequirementAdvice.of(broken.get()));
        } else if (figures.gaps().isEmpty() && !a.verdict(a.fullest()).gaps().isEmpty()) {
            change.setText("To change: searching \u2026");
        } else {
            change.setText(a.requirements().isEmpty() ? "No requirement is stated: write one, e.g. requirement.residual."
                : "Nothing has to change. " + RequirementAdvice.tightest(a.requirements()));
        }
    }

    private static String words(GapLine g) {
        List<String> values = g.values().stream().map(v -> v.path() + " " + v.now() + " \u2192 " + v.holds()).toList();
        return "To change: " + String.join(", ", values) + (g.more() > 0 ? " and " + g.more() + " more" : "")
            + (values.isEmpty() ? g.before() : "") + ". Cause: " + g.cause()
            + (g.after().isEmpty() ? "" : (g.after().startsWith("(") ? " " : "; ") + g.after());
    }

    /** The first value alone, for two short lines. */
    private static String briefly(GapLine g) {
        if (g.values().isEmpty()) {
            return "To change: " + g.before();
        }
        GapLine.Value v = g.values().get(0);
        String path = v.path().substring(v.path().indexOf('.') + 1).replace('.', ' ').replace('_', ' ');
        int more = g.values().size() - 1 + g.more();
        return "To change: " + path + " " + v.now() + " \u2192 " + v.holds() + (more > 0 ? "; and " + more + " more" : "");
    }

    private JLabel mark(RequirementResult r) {
        String size = r.hasMargin() ? NumberFormat.text("%+.2f dB", r.marginDb())
            : NumberFormat.text("%.1f %%", 100 * r.usedShare());
        JLabel label = new JLabel((r.met() ? "\u2713 " : "\u2717 ") + r.name().replace('_', ' ') + " " + size);
        label.setName("asked:" + r.name());
        label.setFont(theme.font(r.met() ? Font.PLAIN : Font.BOLD, 12));
        label.setForeground(r.met() ? theme.good() : theme.bad());
        label.setToolTipText(RequirementAdvice.full(r));
        return label;
    }
}
