package quietband.window.chart;

import javax.swing.JTextArea;

/** Text of several lines that is read and not edited. */
public final class WrappedText extends JTextArea {

    private static final long serialVersionUID = 1;

    /** Empty at first; opaque or on what is behind it. */
    public WrappedText(String name, boolean opaque) {
        setName(name);
        setEditable(false);
        setFocusable(false);
        setLineWrap(true);
        setWrapStyleWord(true);
        setOpaque(opaque);
    }
}
