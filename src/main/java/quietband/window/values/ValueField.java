package quietband.window.values;

import java.awt.Cursor;
import java.awt.event.ActionEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import quietband.model.edit.FileValue;
import quietband.units.Amounts;
import quietband.units.WrongAmountException;

/**
 * One value as a field: typed and taken over with Enter or on leaving, stepped by one percent with the arrow keys (ten with Shift),
 * dragged by its label; Escape brings back what is in force. A bad entry stays to be corrected; what is wrong is told.
 */
final class ValueField extends JTextField {

    private static final long serialVersionUID = 1;
    private static final double PX_PER_STEP = 4;

    private transient FileValue value;
    private final transient Values values;
    private boolean telling;
    private boolean wrong;

    /** What a field needs of the panel it is in. */
    interface Values {

        /** A value is to be set; a gesture that is not empty makes one step of many. */
        void set(FileValue value, String typed, String gesture);

        /** What is wrong with what is typed; empty when nothing is. */
        void problem(FileValue value, String why);

        /** A value is being looked at. */
        void about(FileValue value);
    }

    ValueField(FileValue value, Values values) {
        super(value.text(), 5);
        this.values = values;
        this.value = value;
        setName("value:" + value.path());
        getAccessibleContext().setAccessibleName(value.path());
        if (!value.given()) {
            putClientProperty("JTextField.placeholderText", value.example());
        }
        setCaretPosition(0);
        addActionListener(e -> commit());
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                selectAll();
                values.about(ValueField.this.value);
                scrollRectToVisible(getBounds());
                if (getParent() instanceof JComponent p) {
                    p.scrollRectToVisible(getBounds());
                }
            }

            @Override
            public void focusLost(FocusEvent e) {
                if (!e.isTemporary()) {
                    commit();
                }
            }
        });
        getDocument().addDocumentListener(listener(this::check));
        key(KeyEvent.VK_ESCAPE, 0, this::revert);
        key(KeyEvent.VK_UP, 0, () -> step(1));
        key(KeyEvent.VK_DOWN, 0, () -> step(-1));
        key(KeyEvent.VK_UP, InputEvent.SHIFT_DOWN_MASK, () -> step(10));
        key(KeyEvent.VK_DOWN, InputEvent.SHIFT_DOWN_MASK, () -> step(-10));
    }

    /** Acts at each change of a text. */
    static DocumentListener listener(Runnable action) {
        return new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent e) {
                action.run();
            }

            @Override
            public void removeUpdate(DocumentEvent e) {
                action.run();
            }

            @Override
            public void changedUpdate(DocumentEvent e) {
                action.run();
            }
        };
    }

    private void key(int code, int modifiers, Runnable action) {
        String name = code + "/" + modifiers;
        getInputMap().put(KeyStroke.getKeyStroke(code, modifiers), name);
        getActionMap().put(name, new AbstractAction() {
            private static final long serialVersionUID = 1;

            @Override
            public void actionPerformed(ActionEvent e) {
                action.run();
            }
        });
    }

    FileValue value() {
        return value;
    }

    /** What is in force now; what is being typed, or is wrong, stays. */
    void update(FileValue now) {
        boolean untouched = getText().equals(value.text()) || getText().strip().equals(now.text());
        value = now;
        if (untouched) {
            setWrong("");
            tell(now.text());
        }
    }

    private void tell(String text) {
        if (!getText().equals(text)) {
            telling = true;
            setText(text);
            telling = false;
            setCaretPosition(isFocusOwner() ? text.length() : 0);
        }
    }

    private void check() {
        if (!telling) {
            setWrong(problem(getText()).orElse(""));
        }
    }

    /** What can be said of a text at once, without the rest of the model. */
    private Optional<String> problem(String text) {
        if (!FileValue.oneLine(text)) {
            return Optional.of("holds a line break or begins a comment; write the value alone");
        }
        String typed = text.strip();
        if (value.dimension().isEmpty() || typed.isEmpty() || typed.matches("[{\\[].*")) {
            return Optional.empty();
        }
        try {
            Amounts.read(typed, value.dimension().get());
            return Optional.empty();
        } catch (WrongAmountException e) {
            return Optional.of(e.getMessage());
        }
    }

    /** Marks the field and tells why; an empty reason clears it. */
    void setWrong(String why) {
        boolean before = wrong;
        wrong = !why.isEmpty();
        putClientProperty("JComponent.outline", wrong ? "error" : null);
        if (wrong || before) {
            values.problem(value, why);
        }
    }

    private void commit() {
        String typed = getText().strip();
        if (typed.equals(value.text())) {
            setWrong("");
            return;
        }
        Optional<String> why = problem(typed);
        if (why.isPresent()) {
            setWrong(why.get());
        } else {
            values.set(value, typed, "");
        }
    }

    private void revert() {
        setWrong("");
        tell(value.text());
        selectAll();
    }

    private void step(double steps) {
        if (!value.given() && getText().isBlank()) {
            setText(value.example());
            setCaretPosition(0);
            return;
        }
        TypedAmount.of(getText()).ifPresent(a -> {
            String text = a.moved(steps).text();
            tell(text);
            values.set(value, text, "step " + value.path());
        });
    }

    /** Lets a label beside the field be dragged: right is more, left is less. */
    void draggedBy(JLabel label) {
        label.setCursor(Cursor.getPredefinedCursor(Cursor.E_RESIZE_CURSOR));
        MouseAdapter mouse = new MouseAdapter() {
            private Optional<TypedAmount> start = Optional.empty();
            private int from;
            private String gesture = "";

            @Override
            public void mousePressed(MouseEvent e) {
                start = TypedAmount.of(value.text());
                from = e.getXOnScreen();
                gesture = "drag " + value.path() + " " + e.getWhen();
                values.about(value);
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                start.ifPresent(a -> {
                    String text = a.moved((e.getXOnScreen() - from) / PX_PER_STEP).text();
                    tell(text);
                    values.set(value, text, gesture);
                });
            }
        };
        label.addMouseListener(mouse);
        label.addMouseMotionListener(mouse);
    }
}
