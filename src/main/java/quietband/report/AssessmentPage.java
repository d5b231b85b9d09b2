package quietband.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import quietband.model.Design;
import quietband.model.ModelFile;
import quietband.response.Assessment;
import quietband.response.FrequencyTable;
import quietband.response.OwnGrid;
import quietband.tuning.Gap;

/**
 * The page of an assessment and its charts. A thread of its own begins to draw charts while tables are written and gaps
 * are searched, since loading what draws them takes as long as all the rest; who needs the page draws what is left.
 */
public final class AssessmentPage {

    private final ModelFile file;
    private final Thread drawing;
    private final CountDownLatch begun = new CountDownLatch(1);
    private final AtomicInteger next = new AtomicInteger();
    private FrequencyTable curves;
    private List<FrequencyChart> charts = List.of();
    private String[] pictures = {};
    private RuntimeException failure;

    private AssessmentPage(ModelFile file) {
        this.file = file;
        this.drawing = new Thread(this::draw, "charts");
        drawing.setDaemon(true);
    }

    /** Begins to draw the charts of a model. */
    public static AssessmentPage begin(ModelFile file) {
        AssessmentPage page = new AssessmentPage(file);
        page.drawing.start();
        return page;
    }

    private void draw() {
        try {
            try {
                Design design = file.design();
                double[] grid = OwnGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
                curves = FrequencyTable.of(design, grid, 1);
                charts = new AssessmentCharts(design, curves).all();
                pictures = new String[charts.size()];
            } finally {
                begun.countDown();
            }
            drawOneByOne();
        } catch (RuntimeException e) {
            failure = e;
        }
    }

    /** Draws charts that nobody has begun, until none is left: two threads may be at it. */
    private void drawOneByOne() {
        for (int i = next.getAndIncrement(); i < charts.size(); i = next.getAndIncrement()) {
            pictures[i] = charts.get(i).svg();
        }
    }

    /** Every chart as SVG by the name of its file without ending, in the order of the page. */
    private Map<String, String> drawn() throws InterruptedException {
        drawOneByOne();
        drawing.join();
        if (failure != null) {
            throw failure;
        }
        Map<String, String> drawn = new LinkedHashMap<>();
        for (int i = 0; i < pictures.length; i++) {
            drawn.put(charts.get(i).name(), pictures[i]);
        }
        return drawn;
    }

    /** Writes {@code report.html} and each chart as an SVG file. */
    public void writeTo(ResultDirectory directory, Assessment assessment, List<Gap> gaps, Provenance from) {
        try {
            begun.await();
            Dossier dossier = Dossier.of(file, assessment, curves, gaps, from, directory.target());
            Map<String, String> drawn = drawn();
            drawn.forEach((name, svg) -> directory.write(name + ".svg", w -> w.write(svg)));
            String page = html(dossier, drawn);
            directory.write("report.html", w -> w.write(page));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    static String html(Dossier dossier, Map<String, String> charts) {
        return Pages.render("assess.jte", AssessmentView.of(dossier, charts));
    }
}
