package quietband.window;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Font;
import java.awt.FontMetrics;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JPanel;
import quietband.window.chart.Theme;
import quietband.window.chart.WrappedText;

/** What a command proposes, to be taken over or discarded; not there while nothing is proposed. */
final class OfferBar extends JPanel {

    private static final long serialVersionUID = 1;

    private final WrappedText words = new WrappedText("offer", false);
    private transient Theme theme;
    private final JButton take = new JButton("Accept");
    private final JButton discard = new JButton("Discard");

    /** @param settled told whether it is taken over */
    OfferBar(Theme theme, Consumer<Boolean> settled) {
        super(new BorderLayout(8, 0));
        words.setBorder(BorderFactory.createEmptyBorder());
        take.setName("take");
        discard.setName("discard");
        take.setMnemonic('O');
        discard.setMnemonic('D');
        take.addActionListener(e -> settled.accept(true));
        discard.addActionListener(e -> settled.accept(false));
        JPanel buttons = new JPanel(new FlowLayout(FlowLayout.RIGHT, 4, 0));
        buttons.add(take);
        buttons.add(discard);
        add(words, BorderLayout.CENTER);
        add(buttons, BorderLayout.EAST);
        setVisible(false);
        theme(theme);
    }

    void theme(Theme changed) {
        theme = changed;
        words.setFont(theme.font(Font.BOLD, 13));
        words.setForeground(theme.ink());
        setBorder(BorderFactory.createCompoundBorder(BorderFactory.createMatteBorder(1, 0, 1, 0, theme.faint()),
            BorderFactory.createEmptyBorder(theme.px(4), theme.px(10), theme.px(4), theme.px(8))));
    }

    /** Says that a command is running. */
    void running(String name) {
        tell(name + " is at work \u2026");
        take.setEnabled(false);
        setVisible(true);
    }

    /** Shows what is proposed. */
    void show(String text) {
        tell(text);
        take.setEnabled(true);
        setVisible(true);
        take.requestFocusInWindow();
    }

    /** On one line, or on two where the window is narrow. */
    private void tell(String text) {
        FontMetrics m = words.getFontMetrics(words.getFont());
        int room = (getParent() == null ? 0 : getParent().getWidth()) - theme.px(220);
        words.setText(text);
        words.setPreferredSize(new Dimension(10, m.getHeight() * (m.stringWidth(text) > room ? 2 : 1)));
        words.setToolTipText(text);
    }

    /** Nothing is proposed any more. */
    void away() {
        setVisible(false);
    }
}
