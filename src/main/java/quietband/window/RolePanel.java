package quietband.window;

import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import quietband.window.card.FigureCard;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** The cards of the role at hand, side by side, or as tabs where there is little room. */
final class RolePanel extends JPanel {

    private static final long serialVersionUID = 1;

    private final transient Map<Role, List<FigureCard>> cards = new EnumMap<>(Role.class);
    private Role role = Role.PLATFORM;
    private boolean tabs;
    private transient Theme theme;

    RolePanel(Theme theme, Map<Role, List<FigureCard>> cards) {
        super(new BorderLayout());
        this.theme = theme;
        this.cards.putAll(cards);
        setName("role");
        build();
    }

    void theme(Theme changed) {
        theme = changed;
        cards.values().forEach(list -> list.forEach(c -> c.theme(changed)));
        build();
    }

    /** Shows the cards of a role. */
    void open(Role other) {
        role = other;
        build();
    }

    Role role() {
        return role;
    }

    /** Whether there is little room. */
    void narrow(boolean little) {
        if (little != tabs) {
            tabs = little;
            build();
        }
    }

    public void show(BackgroundFigures figures) {
        cards.values().forEach(list -> list.forEach(c -> c.show(figures)));
    }

    private void build() {
        removeAll();
        JComponent inside;
        if (tabs) {
            JTabbedPane pane = new JTabbedPane();
            pane.setTabLayoutPolicy(JTabbedPane.SCROLL_TAB_LAYOUT);
            cards.get(role).forEach(c -> pane.addTab(c.tab(), c));
            inside = pane;
        } else {
            inside = new JPanel(new GridLayout(1, 0, theme.px(6), 0));
            cards.get(role).forEach(inside::add);
        }
        add(inside, BorderLayout.CENTER);
        revalidate();
        repaint();
    }
}
