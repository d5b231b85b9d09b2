package quietband.window;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import quietband.report.page.Caution;
import quietband.report.page.VerdictSentence;
import quietband.report.svg.Svg;
import quietband.window.bench.ModelStore;
import quietband.window.chart.BandStrip;
import quietband.window.chart.ResidualChart;
import quietband.window.chart.Theme;
import quietband.window.work.BackgroundFigures;

/** The view as a file: verdict, band strip and residual over each other, with what it is a picture of. */
final class PictureFile {

    private static final int WIDTH = 1200;
    private static final int HEIGHT = 720;
    private static final int HEAD = 64;
    private static final int STRIP = 124;

    private final BackgroundFigures figures;
    private final Theme theme = new Theme(false, 100);
    private final int axis;

    /** @param axis 0 to 2, or 3 for the vector */
    PictureFile(BackgroundFigures figures, int axis) {
        this.figures = figures;
        this.axis = axis;
    }

    /** Writes SVG or, when the name ends so, PNG. Safe off the event thread: nothing of it is on the screen. */
    void write(Path to) {
        boolean png = to.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".png");
        ModelStore.write(to, png ? png() : Svg.draw("view", title(), WIDTH, HEIGHT, this::draw).getBytes(StandardCharsets.UTF_8));
    }

    private byte[] png() {
        BufferedImage image = new BufferedImage(2 * WIDTH, 2 * HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.scale(2, 2);
        draw(g);
        g.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private String title() {
        String title = figures.assessment().design().title();
        return title.isEmpty() ? figures.view().bench().variant().name() : title;
    }

    private void draw(Graphics2D g) {
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, WIDTH, HEIGHT);
        words(g, title() + ", " + figures.view().bench().variant().name() + ": " + VerdictSentence.sentence(figures.assessment()),
            24, Font.BOLD);
        words(g, "model " + figures.view().model().hash().substring(0, 12) + ", residual "
            + (axis < 3 ? "along " + "xyz".charAt(axis) : "as vector") + ". " + Caution.PREDICTION, 46, Font.PLAIN);
        Graphics2D lower = (Graphics2D) g.create();
        lower.translate(0, HEAD);
        BandStrip strip = new BandStrip(theme);
        strip.show(figures.view());
        strip.show(figures);
        strip.draw(lower, WIDTH, STRIP);
        ResidualChart chart = new ResidualChart(theme);
        chart.axis(axis);
        chart.show(figures.view());
        chart.show(figures);
        chart.draw(lower, new Rectangle2D.Double(0, STRIP, WIDTH, HEIGHT - HEAD - STRIP - 8));
        lower.dispose();
    }

    private void words(Graphics2D g, String text, int y, int style) {
        g.setColor(theme.ink());
        g.setFont(theme.font(style, 14));
        g.drawString(text, 16, y);
    }
}
