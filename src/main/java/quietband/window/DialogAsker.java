package quietband.window;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.FileDialog;
import java.awt.Frame;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JOptionPane;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;

/** Asks by dialogs in front of a window. */
final class DialogAsker implements Asker {

    private final Component owner;

    DialogAsker(Component owner) {
        this.owner = owner;
    }

    @Override
    public int choose(String title, String question, String... answers) {
        return JOptionPane.showOptionDialog(owner, area(question), title, JOptionPane.DEFAULT_OPTION, JOptionPane.QUESTION_MESSAGE, null,
            answers, answers[0]);
    }

    @Override
    public Optional<String> line(String title, String question, String first) {
        Object typed = JOptionPane.showInputDialog(owner, question, title, JOptionPane.QUESTION_MESSAGE, null, null, first);
        return Optional.ofNullable(typed).map(t -> t.toString().strip()).filter(t -> !t.isEmpty());
    }

    @Override
    public Optional<Path> file(String title, Path near, boolean save) {
        Frame frame = (Frame) SwingUtilities.getWindowAncestor(owner);
        FileDialog dialog = new FileDialog(frame, title, save ? FileDialog.SAVE : FileDialog.LOAD);
        Path parent = near.toAbsolutePath().getParent();
        dialog.setDirectory(parent == null ? null : parent.toString());
        dialog.setFile(near.getFileName().toString());
        dialog.setVisible(true);
        return dialog.getFile() == null ? Optional.empty() : Optional.of(Path.of(dialog.getDirectory(), dialog.getFile()));
    }

    @Override
    public void tell(String title, String text) {
        JOptionPane.showMessageDialog(owner, area(text), title, JOptionPane.PLAIN_MESSAGE);
    }

    private static Component area(String text) {
        JTextArea area = new JTextArea(text);
        area.setEditable(false);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setOpaque(false);
        area.setFocusable(false);
        int em = area.getFontMetrics(area.getFont()).charWidth('m');
        area.setSize(new Dimension(em * 44, Short.MAX_VALUE));
        Dimension whole = area.getPreferredSize();
        area.setPreferredSize(new Dimension(em * 44, whole.height));
        JScrollPane scroll = new JScrollPane(area);
        scroll.setBorder(null);
        return scroll;
    }
}
