package quietband.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.swing.JLabel;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import quietband.model.edit.ModelFile;
import quietband.window.bench.EditingBench;
import quietband.window.chart.Theme;

/** A real window for a test, with hands on keyboard and mouse and prepared answers to its questions. */
final class OpenedWindow implements Questions, AutoCloseable {

    final MainWindow window;
    final Deque<Integer> choices = new ArrayDeque<>();
    final Deque<String> lines = new ArrayDeque<>();
    final Deque<String> asked = new ArrayDeque<>();
    private final Robot robot;

    OpenedWindow(Path model, Path state, Theme theme, int width, int height) throws AWTException {
        EditingBench bench = EditingBench.of(ModelFile.read(model));
        window = onEvents(() -> {
            theme.apply();
            MainWindow w = new MainWindow(bench, theme, state, "test", this);
            w.frame().setLocation(0, 0);
            w.frame().setSize(width, height);
            w.frame().setVisible(true);
            return w;
        });
        robot = new Robot();
        robot.setAutoDelay(4);
        settle();
    }

    /** The main model in a folder of its own, with all the files it refers to. */
    static Path mainModel(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(Path.of("models"))) {
            for (Path p : all.filter(Files::isRegularFile).toList()) {
                Path to = folder.resolve(p);
                Files.createDirectories(to.getParent());
                Files.copy(p, to);
            }
        }
        return folder.resolve("models/ridge-relay.yaml");
    }

    static <T> T onEvents(Supplier<T> work) {
        AtomicReference<T> result = new AtomicReference<>();
        try {
            SwingUtilities.invokeAndWait(() -> result.set(work.get()));
        } catch (InterruptedException | InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
        return result.get();
    }

    static void await(String what, BooleanSupplier done) {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!onEvents(done::getAsBoolean)) {
            assertThat(System.nanoTime()).as("in time: " + what).isLessThan(end);
            LockSupport.parkNanos(3_000_000);
        }
    }

    /** Waits until everything asked for is done and shown. */
    void settle() {
        robot.waitForIdle();
        await("all work done", window::idle);
    }

    Component named(String name) {
        return onEvents(() -> find(window.frame(), name));
    }

    private static Component find(Container in, String name) {
        for (Component c : in.getComponents()) {
            if (name.equals(c.getName())) {
                return c;
            }
            Component inside = c instanceof Container box ? find(box, name) : null;
            if (inside != null) {
                return inside;
            }
        }
        return null;
    }

    String text(String name) {
        return onEvents(() -> find(window.frame(), name) instanceof JTextComponent t ? t.getText()
            : ((JLabel) find(window.frame(), name)).getText());
    }

    void focus(String name) {
        Component c = named(name);
        onEvents(c::requestFocusInWindow);
        await("focus on " + name, c::isFocusOwner);
    }

    /** Searches a value by Ctrl+F, goes to its first field by Enter and types over it. */
    void set(String words, String value) {
        key(KeyEvent.VK_F, KeyEvent.VK_CONTROL);
        type(words);
        key(KeyEvent.VK_ENTER);
        type(value);
        key(KeyEvent.VK_ENTER);
        settle();
    }

    /** Moves the mouse to a place in a widget, in shares of its width and height. */
    void point(String name, double right, double down) {
        Component c = named(name);
        Point p = onEvents(c::getLocationOnScreen);
        robot.mouseMove(p.x + (int) (right * c.getWidth()), p.y + (int) (down * c.getHeight()));
        robot.waitForIdle();
    }

    /** Presses a key with others held. */
    void key(int code, int... held) {
        for (int h : held) {
            robot.keyPress(h);
        }
        robot.keyPress(code);
        robot.keyRelease(code);
        for (int i = held.length - 1; i >= 0; i--) {
            robot.keyRelease(held[i]);
        }
        robot.waitForIdle();
    }

    /** Types over what a field holds; small letters, capitals, digits and a few signs. */
    void type(String text) {
        key(KeyEvent.VK_A, KeyEvent.VK_CONTROL);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            int code = c == '/' ? KeyEvent.VK_SLASH : c == '.' ? KeyEvent.VK_PERIOD : c == ' ' ? KeyEvent.VK_SPACE
                : c == '-' ? KeyEvent.VK_MINUS : Character.toUpperCase(c);
            if (Character.isUpperCase(c)) {
                key(code, KeyEvent.VK_SHIFT);
            } else {
                key(code);
            }
        }
    }

    /** Drags a widget sideways by some px, in small steps. */
    void drag(String name, int by) {
        Component c = named(name);
        Point p = onEvents(c::getLocationOnScreen);
        int x = p.x + c.getWidth() / 2;
        int y = p.y + c.getHeight() / 2;
        robot.mouseMove(x, y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        for (int i = 1; i <= 20; i++) {
            robot.mouseMove(x + by * i / 20, y);
        }
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    @Override
    public int choose(String title, String question, String... answers) {
        asked.add(question);
        return choices.isEmpty() ? -1 : choices.remove();
    }

    @Override
    public Optional<String> line(String title, String question, String first) {
        asked.add(question);
        return Optional.ofNullable(lines.poll());
    }

    @Override
    public Optional<Path> file(String title, Path near, boolean save) {
        asked.add(title);
        return Optional.ofNullable(lines.poll()).map(Path::of);
    }

    @Override
    public void tell(String title, String text) {
        asked.add(text);
    }

    @Override
    public void close() {
        onEvents(() -> {
            window.frame().dispose();
            return true;
        });
    }
}
