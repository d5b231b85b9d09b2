package quietband.window.chart;

import java.awt.Font;
import java.awt.GridLayout;
import java.awt.Insets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.ButtonGroup;
import javax.swing.JPanel;
import javax.swing.JToggleButton;

/** Chooses which axis the chart shows: x, y, z or the vector. */
public final class AxisButtons extends JPanel {

    private static final long serialVersionUID = 1;
    private static final List<String> NAMES = List.of("x", "y", "z", "vector");

    private final List<JToggleButton> buttons = new ArrayList<>();

    public AxisButtons(Theme theme, IntConsumer chosen) {
        super(new GridLayout(0, 1));
        setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        for (int i = 0; i < NAMES.size(); i++) {
            int index = i;
            JToggleButton b = new JToggleButton(NAMES.get(i), i == 0);
            b.setName("axis:" + NAMES.get(i));
            b.setToolTipText("residual " + (i < 3 ? "along " + NAMES.get(i) : "as vector of the three axes"));
            b.addActionListener(e -> chosen.accept(index));
            b.setMargin(new Insets(2, 1, 2, 1));
            group.add(b);
            buttons.add(b);
            add(b);
        }
        theme(theme);
    }

    public void theme(Theme theme) {
        buttons.forEach(b -> b.setFont(theme.font(Font.PLAIN, 12)));
    }

    public void select(int index) {
        buttons.get(index).setSelected(true);
    }
}
