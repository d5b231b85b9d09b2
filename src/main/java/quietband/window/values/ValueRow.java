package quietband.window.values;

import java.awt.BorderLayout;
import java.awt.Font;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import quietband.model.edit.FileValue;
import quietband.window.chart.Theme;
import quietband.window.chart.WrappedText;

/** The values of one key beside its name, one field or one for each axis, and under them what is wrong. */
final class ValueRow extends JPanel {

    private static final long serialVersionUID = 1;

    private final List<ValueField> fields = new ArrayList<>();
    private final List<JComboBox<String>> choices = new ArrayList<>();
    private final WrappedText wrong;
    private final transient List<FileValue> values;
    private boolean telling;

    /** @param values of one key: one, or one for each part */
    ValueRow(List<FileValue> values, Theme theme, ValueField.Values panel) {
        super(new BorderLayout(theme.px(6), 0));
        this.values = new ArrayList<>(values);
        setBorder(BorderFactory.createEmptyBorder(theme.px(1), theme.px(8), theme.px(1), theme.px(6)));
        FileValue first = values.get(0);
        JLabel name = new JLabel(first.key().replace('_', ' '));
        name.setFont(theme.font(Font.PLAIN, 12));
        name.setForeground(first.given() ? theme.ink() : theme.faint());
        boolean many = values.size() > 1;
        boolean wide = many || first.dimension().isEmpty() && first.words().isEmpty();
        JPanel line = new JPanel(new GridLayout(1, 0, theme.px(4), 0));
        for (FileValue v : values) {
            line.add(cell(v, theme, panel, many, name));
        }
        JPanel both = new JPanel(new BorderLayout(theme.px(4), 0));
        if (wide) {
            both.add(name, BorderLayout.NORTH);
            both.add(line, BorderLayout.CENTER);
        } else {
            name.setPreferredSize(new java.awt.Dimension(theme.px(128), name.getPreferredSize().height));
            both.add(name, BorderLayout.WEST);
            both.add(line, BorderLayout.CENTER);
        }
        add(both, BorderLayout.CENTER);
        wrong = new WrappedText("wrong:" + first.block() + "." + first.key(), false);
        wrong.setBorder(null);
        wrong.setFont(theme.font(Font.PLAIN, 12));
        wrong.setForeground(theme.bad());
        wrong.setVisible(false);
        add(wrong, BorderLayout.SOUTH);
    }

    private JComponent cell(FileValue v, Theme theme, ValueField.Values panel, boolean many, JLabel name) {
        if (!v.words().isEmpty()) {
            return choice(v, panel);
        }
        ValueField field = new ValueField(v, panel);
        field.setFont(theme.font(Font.PLAIN, 12));
        fields.add(field);
        if (!many) {
            field.draggedBy(name);
            name.setLabelFor(field);
            return field;
        }
        JLabel part = new JLabel(v.part(), SwingConstants.RIGHT);
        part.setName("drag:" + v.path());
        part.setFont(theme.font(Font.PLAIN, 12));
        part.setForeground(theme.faint());
        field.draggedBy(part);
        JPanel cell = new JPanel(new BorderLayout(theme.px(3), 0));
        cell.add(part, BorderLayout.WEST);
        cell.add(field, BorderLayout.CENTER);
        return cell;
    }

    private JComboBox<String> choice(FileValue v, ValueField.Values panel) {
        JComboBox<String> box = new JComboBox<>(v.words().toArray(String[]::new));
        box.setName("value:" + v.path());
        if (!v.given()) {
            box.insertItemAt("", 0);
        }
        box.setSelectedItem(v.text());
        box.addActionListener(e -> {
            if (!telling && box.getSelectedItem() != null && !box.getSelectedItem().equals(v.text())) {
                panel.set(v, box.getSelectedItem().toString(), "");
            }
        });
        choices.add(box);
        return box;
    }

    /** Paths it shows. */
    List<String> paths() {
        return values.stream().map(FileValue::path).toList();
    }

    /** Shows what is in force now; the same paths. */
    void update(List<FileValue> now) {
        int field = 0;
        for (int i = 0; i < now.size(); i++) {
            values.set(i, now.get(i));
            if (now.get(i).words().isEmpty()) {
                fields.get(field++).update(now.get(i));
            } else {
                telling = true;
                choices.get(0).setSelectedItem(now.get(i).text());
                telling = false;
            }
        }
    }

    /** Puts the focus into the field of a path, else into the first. */
    void enter(String path) {
        ValueField wanted = field(path);
        (wanted != null ? wanted : fields.isEmpty() ? choices.get(0) : fields.get(0)).requestFocusInWindow();
    }

    /** Path of the value that has the focus; empty when none has. */
    Optional<String> focused() {
        if (choices.stream().anyMatch(JComboBox::isFocusOwner)) {
            return Optional.of(values.get(0).path());
        }
        return fields.stream().filter(ValueField::isFocusOwner).map(f -> f.value().path()).findFirst();
    }

    /** The field of a path; null when it has none. */
    ValueField field(String path) {
        return fields.stream().filter(f -> f.value().path().equals(path)).findFirst().orElse(null);
    }

    /** Says beside the fields what is wrong; nothing when the text is empty. */
    void wrong(String why) {
        wrong.setText(why);
        wrong.setVisible(!why.isEmpty());
        revalidate();
    }
}
