package quietband.window;

import java.awt.GraphicsEnvironment;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javax.swing.SwingUtilities;
import quietband.model.edit.ModelFile;
import quietband.model.edit.StartModel;
import quietband.window.bench.EditingBench;
import quietband.window.bench.Recovery;
import quietband.window.chart.Theme;

/** Opens the window on a model and waits until it is closed. */
public final class OpenWindow {

    private OpenWindow() { }

    /**
     * Opens.
     *
     * @param model   the model file; empty for a commented start that is in no file yet
     * @param dark    light lines on dark paper
     * @param percent scale, 100 to 200
     * @param version of the program, for reports
     * @throws quietband.model.ModelException when the model is wrong
     * @throws NoDisplayException             when there is nothing to open a window on
     */
    public static void andWait(Optional<Path> model, boolean dark, int percent, String version) {
        if (GraphicsEnvironment.isHeadless()) {
            throw new NoDisplayException("there is no display to open a window on; every figure of the window is also given by "
                + "'quietband assess MODEL'");
        }
        EditingBench bench = model.map(p -> EditingBench.of(ModelFile.read(p)))
            .orElseGet(() -> EditingBench.of(ModelFile.parse(Path.of("my-design.yaml"), StartModel.text()), false));
        CountDownLatch closed = new CountDownLatch(1);
        try {
            SwingUtilities.invokeAndWait(() -> open(bench, new Theme(dark, percent), version, closed));
            closed.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (InvocationTargetException e) {
            throw e.getCause() instanceof RuntimeException r ? r : new IllegalStateException(e.getCause());
        }
    }

    private static void open(EditingBench bench, Theme theme, String version, CountDownLatch closed) {
        theme.apply();
        MainWindow window = new MainWindow(bench, theme, Recovery.usualFolder(), version, null);
        window.frame().addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosed(WindowEvent e) {
                closed.countDown();
            }
        });
        window.frame().setLocationByPlatform(true);
        window.frame().setVisible(true);
        window.offerRecovery();
    }
}
