package quietband.window;

import java.awt.AWTException;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import quietband.window.chart.Theme;

/** A window on a copy of the main model for each test; skipped, and said so, without a display. */
abstract class OnDisplay {

    @TempDir
    Path folder;
    Path model;
    OpenedWindow opened;

    @BeforeAll
    static void display() {
        Display.assumeThere();
    }

    @BeforeEach
    void open() throws IOException, AWTException {
        model = OpenedWindow.mainModel(folder);
        opened = new OpenedWindow(model, folder.resolve("state"), new Theme(false, 100), 1280, 800);
    }

    @AfterEach
    void close() {
        opened.close();
    }
}
