package quietband.window;

import java.awt.BorderLayout;
import java.awt.FlowLayout;
import java.awt.Font;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;

/** What a command proposes, to be taken over or discarded; not there while nothing is proposed. */
final class OfferBar extends JPanel {

    private static final long serialVersionUID = 1;

    private final JLabel words = new JLabel();
    private final JButton take = new JButton("Take over");
    private final JButton discard = new JButton("Discard");

    /** @param settled told whether it is taken over */
    OfferBar(Theme theme, Consumer<Boolean> settled) {
        super(new BorderLayout(8, 0));
        words.setName("offer");
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

    void theme(Theme theme) {
        words.setFont(theme.font(Font.BOLD, 13));
        setBorder(BorderFactory.createCompoundBorder(BorderFactory.createMatteBorder(1, 0, 1, 0, theme.faint()),
            BorderFactory.createEmptyBorder(theme.px(4), theme.px(10), theme.px(4), theme.px(8))));
    }

    /** Says that a command is running. */
    void running(String name) {
        words.setText(name + " is at work \u2026");
        take.setEnabled(false);
        setVisible(true);
    }

    /** Shows what is proposed. */
    void show(String text) {
        words.setText(text);
        words.setToolTipText(text);
        take.setEnabled(true);
        setVisible(true);
        take.requestFocusInWindow();
    }

    /** Nothing is proposed any more. */
    void away() {
        setVisible(false);
    }
}
