package quietband.window;

import java.awt.Component;
import java.awt.Dimension;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import quietband.window.chart.WrappedText;

/** Asks by dialogs in front of a window. */
final class DialogQuestions implements Questions {

    private final Component owner;

    DialogQuestions(Component owner) {
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
        JFileChooser chooser = new JFileChooser();
        chooser.setDialogTitle(title);
        chooser.setSelectedFile(near.toAbsolutePath().toFile());
        int answer = save ? chooser.showSaveDialog(owner) : chooser.showOpenDialog(owner);
        if (answer != JFileChooser.APPROVE_OPTION) {
            return Optional.empty();
        }
        Path path = chooser.getSelectedFile().toPath();
        boolean keep = save && Files.exists(path)
            && choose(title, path.getFileName() + " exists already.", "Leave it", "Overwrite it") != 1;
        return keep ? Optional.empty() : Optional.of(path);
    }

    @Override
    public void tell(String title, String text) {
        JOptionPane.showMessageDialog(owner, area(text), title, JOptionPane.PLAIN_MESSAGE);
    }

    private static Component area(String text) {
        JTextArea area = new WrappedText("words", false);
        area.setText(text);
        int em = area.getFontMetrics(area.getFont()).charWidth('m');
        area.setSize(new Dimension(em * 44, Short.MAX_VALUE));
        Dimension whole = area.getPreferredSize();
        area.setPreferredSize(new Dimension(em * 44, whole.height));
        JScrollPane scroll = new JScrollPane(area);
        scroll.setBorder(null);
        return scroll;
    }
}
