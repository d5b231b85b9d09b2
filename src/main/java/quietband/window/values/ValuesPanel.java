package quietband.window.values;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Font;
import java.awt.GridLayout;
import java.awt.Rectangle;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.Scrollable;
import quietband.model.edit.FileValue;
import quietband.window.bench.EditOrder;
import quietband.window.bench.ModelSection;
import quietband.window.bench.RefusedEdit;
import quietband.window.chart.Theme;
import quietband.window.chart.WrappedText;
import quietband.window.work.Proposal;
import quietband.window.work.Proposals;

/** The values of the model, one section at a time, each with what the format and the file say about it. */
public final class ValuesPanel extends JPanel implements ValueField.Values {

    private static final long serialVersionUID = 1;

    private static final String HINT = "Enter accepts a value; up and down step it by 1 %, with Shift by 10 %; or drag its "
        + "name sideways. F1 lists the keys.";

    private static final String NOT_THERE = ", not in the file";

    private final transient Consumer<EditOrder> orders;
    private final Map<ModelSection, JToggleButton> sections = new EnumMap<>(ModelSection.class);
    private final JTextField find = new JTextField();
    private final JCheckBox all = new JCheckBox("all");
    private final Rows rows = new Rows();
    private final JScrollPane scroll = new JScrollPane(rows);
    private final WrappedText about = new WrappedText("about", true);
    private final JPanel buttons = new JPanel(new GridLayout(2, 3));
    private final JComboBox<String> choice = new JComboBox<>();
    private final JPanel commands = new JPanel(new FlowLayout(FlowLayout.LEFT, 4, 0));
    private final JPanel top = new JPanel(new BorderLayout());
    private final Map<String, ValueRow> shown = new LinkedHashMap<>();
    private transient List<FileValue> values = List.of();
    private transient Theme theme;
    private ModelSection section = ModelSection.PLATFORM;

    public ValuesPanel(Theme theme, Consumer<EditOrder> orders, Consumer<Proposal> run) {
        super(new BorderLayout());
        this.orders = orders;
        this.theme = theme;
        ButtonGroup group = new ButtonGroup();
        for (ModelSection s : ModelSection.values()) {
            JToggleButton b = new JToggleButton(s.title());
            b.setName("section:" + s.title());
            b.addActionListener(e -> open(s));
            group.add(b);
            buttons.add(b);
            sections.put(s, b);
            choice.addItem(s.title());
        }
        choice.setName("section");
        choice.addActionListener(e -> {
            if (choice.getSelectedIndex() != section.ordinal()) {
                open(ModelSection.values()[choice.getSelectedIndex()]);
            }
        });
        find.setName("find");
        find.putClientProperty("JTextField.placeholderText", "find a value, Enter");
        find.putClientProperty("JTextField.showClearButton", true);
        find.getDocument().addDocumentListener(ValueField.listener(this::build));
        find.addActionListener(e -> shown.values().stream().findFirst().ifPresent(r -> r.enter("")));
        all.setName("all");
        all.setToolTipText("also names, places of springs, stops, limits, and all that the file leaves out");
        all.addActionListener(e -> build());
        JPanel line = new JPanel(new BorderLayout(4, 0));
        line.add(choice, BorderLayout.WEST);
        line.add(find, BorderLayout.CENTER);
        line.add(all, BorderLayout.EAST);
        top.add(buttons, BorderLayout.CENTER);
        for (Proposal p : Proposals.all()) {
            JButton b = new JButton(p.name() + (p.question().isPresent() ? " \u2026" : ""));
            b.setName("run:" + p.name());
            b.putClientProperty(ModelSection.class, p.section());
            b.addActionListener(e -> run.accept(p));
            commands.add(b);
        }
        JPanel lines = new JPanel(new BorderLayout());
        lines.add(line, BorderLayout.NORTH);
        lines.add(commands, BorderLayout.CENTER);
        top.add(lines, BorderLayout.SOUTH);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        scroll.getVerticalScrollBar().setUnitIncrement(24);
        about.setText(HINT);
        about.setRows(3);
        about.setColumns(10);
        add(top, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        add(about, BorderLayout.SOUTH);
        theme(theme);
    }

    public void theme(Theme changed) {
        theme = changed;
        sections.values().forEach(b -> b.setFont(theme.font(Font.PLAIN, 12)));
        about.setFont(theme.font(Font.PLAIN, 12));
        about.setBackground(theme.ground());
        about.setForeground(theme.ink());
        about.setBorder(BorderFactory.createEmptyBorder(theme.px(4), theme.px(8), theme.px(4), theme.px(6)));
        top.setBorder(BorderFactory.createEmptyBorder(theme.px(4), theme.px(4), theme.px(4), theme.px(4)));
        scroll.setBorder(BorderFactory.createEmptyBorder());
        build();
    }

    /** Leaves less room to what is said about a value where there is little height. */
    public void brief(boolean little) {
        about.setRows(little ? 2 : 3);
        buttons.setVisible(!little);
        choice.setVisible(little);
    }

    /** Opens a section. */
    public void open(ModelSection other) {
        section = other;
        for (Component c : commands.getComponents()) {
            c.setVisible(((JButton) c).getClientProperty(ModelSection.class) == other);
        }
        sections.get(other).setSelected(true);
        choice.setSelectedIndex(other.ordinal());
        find.setText("");
        build();
    }

    /** Puts the focus where a value is searched. */
    public void search() {
        find.requestFocusInWindow();
        find.selectAll();
    }

    /** Shows the values of a view; fields stay while the model has the same keys. */
    public void show(List<FileValue> next) {
        boolean same = paths(next).equals(paths(values));
        values = next;
        if (!same) {
            build();
            return;
        }
        Map<String, FileValue> byPath = new LinkedHashMap<>();
        next.forEach(v -> byPath.put(v.path(), v));
        shown.values().stream().distinct().forEach(r -> r.update(r.paths().stream().map(byPath::get).toList()));
    }

    private static List<String> paths(List<FileValue> list) {
        return list.stream().filter(FileValue::given).map(FileValue::path).toList();
    }

    private boolean wanted(FileValue v) {
        String sought = find.getText().strip().toLowerCase(Locale.ROOT);
        if (v.path().equals("quietband")) {
            return false;
        }
        return sought.isEmpty() ? section.holds(v) && (all.isSelected() || v.given() && ModelSection.turned(v))
            : found(List.of(v.path().toLowerCase(Locale.ROOT).split("[._\\[\\] ]+")), sought.split("[._ ]+"));
    }

    /** Whether every word begins a part of a path. */
    private static boolean found(List<String> parts, String[] words) {
        for (String w : words) {
            if (parts.stream().noneMatch(p -> p.startsWith(w))) {
                return false;
            }
        }
        return true;
    }

    private void build() {
        String focus = shown.values().stream().flatMap(r -> r.focused().stream()).findFirst().orElse("");
        rows.clear();
        shown.clear();
        List<FileValue> list = ordered();
        String block = "";
        for (int i = 0; i < list.size();) {
            int end = i + 1;
            while (end < list.size() && !list.get(i).part().isEmpty() && list.get(end).block().equals(list.get(i).block())
                && list.get(end).key().equals(list.get(i).key())) {
                end++;
            }
            String now = list.get(i).block() + (list.get(i).given() ? "" : NOT_THERE);
            if (!now.equals(block)) {
                block = now;
                rows.plus(heading(block));
            }
            ValueRow row = new ValueRow(list.subList(i, end), theme, this);
            row.paths().forEach(p -> shown.put(p, row));
            rows.plus(row);
            i = end;
        }
        rows.revalidate();
        rows.repaint();
        shown.entrySet().stream().filter(e -> !focus.isEmpty() && (e.getKey().equals(focus) || e.getKey().startsWith(focus + ".")))
            .findFirst().ifPresent(e -> e.getValue().enter(e.getKey()));
    }

    /** What is wanted; in a search, what the file has before what it leaves out. */
    private List<FileValue> ordered() {
        List<FileValue> list = values.stream().filter(this::wanted).toList();
        return find.getText().isBlank() ? list
            : Stream.concat(list.stream().filter(FileValue::given), list.stream().filter(v -> !v.given())).toList();
    }

    private JPanel heading(String block) {
        String words = block.replaceFirst("^[a-z]+\\.", "").replace(".", " \u203a ").replace('_', ' ');
        JLabel label = new JLabel(words.isEmpty() || words.equals(NOT_THERE) ? "model" + words : words);
        label.setFont(theme.font(Font.BOLD, 12));
        label.setBorder(BorderFactory.createEmptyBorder(theme.px(6), theme.px(8), theme.px(1), 0));
        label.setAlignmentX(LEFT_ALIGNMENT);
        JPanel line = new JPanel(new BorderLayout());
        line.add(label, BorderLayout.WEST);
        return line;
    }

    /** Shows why an entry was refused, beside its field. */
    public void refused(RefusedEdit refusal) {
        ValueRow row = shown.get(refusal.about());
        if (row != null && row.field(refusal.about()) != null) {
            row.field(refusal.about()).setWrong(refusal.why());
        }
    }

    /** Whether a value has a field now. */
    public boolean shows(String path) {
        return shown.containsKey(path);
    }

    @Override
    public void set(FileValue v, String typed, String gesture) {
        String label = (v.key() + " " + v.part()).strip().replace('_', ' ') + " " + (typed.isEmpty() ? "left out" : typed);
        if (typed.isEmpty()) {
            orders.accept(new EditOrder(v.path(), typed, gesture, b -> b.take(label, gesture, b.model().without(v.path()))));
        } else {
            orders.accept(EditOrder.set(label, gesture, v.path(), typed, v.yaml(typed)));
        }
    }

    @Override
    public void problem(FileValue v, String why) {
        ValueRow row = shown.get(v.path());
        if (row != null) {
            row.wrong(why);
        }
    }

    @Override
    public void about(FileValue v) {
        about.setText(v.path() + ": " + v.doc() + (v.given() ? "" : "; up or down puts an example there: " + v.example())
            + (v.comment().isEmpty() ? "" : "\nFile: " + v.comment()));
        about.setCaretPosition(0);
    }

    /** Rows under each other, each as wide as the panel and as high as it wants. */
    private static final class Rows extends JPanel implements Scrollable {

        private static final long serialVersionUID = 1;

        private final Box list = Box.createVerticalBox();

        Rows() {
            super(new BorderLayout());
            add(list, BorderLayout.NORTH);
        }

        void clear() {
            list.removeAll();
        }

        void plus(JPanel row) {
            row.setAlignmentX(LEFT_ALIGNMENT);
            list.add(row);
        }

        @Override
        public Dimension getPreferredScrollableViewportSize() {
            return getPreferredSize();
        }

        @Override
        public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
            return 24;
        }

        @Override
        public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
            return visible.height;
        }

        @Override
        public boolean getScrollableTracksViewportWidth() {
            return true;
        }

        @Override
        public boolean getScrollableTracksViewportHeight() {
            return false;
        }
    }
}
