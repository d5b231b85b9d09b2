package quietband.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.response.Assessment;
import quietband.response.FrequencyTable;
import quietband.response.OwnGrid;
import quietband.tuning.Gap;

/**
 * The page of an assessment and its charts. Charts are drawn on a thread of their own while tables are written and gaps
 * are searched: loading what draws them takes as long as all the rest.
 */
public final class AssessmentPage {

    private final ModelFile file;
    private final FrequencyTable[] curves = new FrequencyTable[1];
    private final Map<String, String> charts = new LinkedHashMap<>();
    private final RuntimeException[] failure = new RuntimeException[1];
    private final Thread drawing;

    private AssessmentPage(ModelFile file) {
        this.file = file;
        this.drawing = new Thread(this::draw, "charts");
        drawing.setDaemon(true);
    }

    /** Loads what draws charts while the model is read. What goes wrong here shows when they are drawn. */
    public static void warmUp() {
        Thread thread = new Thread(() -> {
            double[] x = {10, 100, 1000};
            ChartLine line = new ChartLine("line", x, x, Look.number(0));
            new FrequencyChart("warm", "", "", 10, 1000, new FrequencyChart.Scale(true, 1, 1000), List.of(line)).svg();
        }, "fonts");
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((t, e) -> { });
        thread.start();
    }

    /** Begins to draw the charts of a model. */
    public static AssessmentPage begin(ModelFile file) {
        AssessmentPage page = new AssessmentPage(file);
        page.drawing.start();
        return page;
    }

    private void draw() {
        try {
            Design design = file.design();
            double[] grid = OwnGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
            curves[0] = FrequencyTable.of(design, grid, 1);
            new AssessmentCharts(design, curves[0]).all().forEach((name, chart) -> charts.put(name, chart.svg()));
        } catch (RuntimeException e) {
            failure[0] = e;
        }
    }

    private void drawn() {
        try {
            drawing.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
        if (failure[0] != null) {
            throw failure[0];
        }
    }

    /** Writes {@code report.html} and each chart as an SVG file. */
    public void writeTo(ResultDirectory directory, Assessment assessment, List<Gap> gaps, Provenance from) {
        drawn();
        charts.forEach((name, svg) -> directory.write(name + ".svg", w -> w.write(svg)));
        String page = html(Dossier.of(file, assessment, curves[0], gaps, from, directory.target()), charts);
        directory.write("report.html", w -> w.write(page));
    }

    static String html(Dossier dossier, Map<String, String> charts) {
        return Pages.render("assess.jte", AssessmentView.of(dossier, charts));
    }
}
