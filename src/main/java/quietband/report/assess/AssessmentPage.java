package quietband.report.assess;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.report.chart.FrequencyChart;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.page.PageTemplates;
import quietband.response.DesignGrid;
import quietband.response.FrequencyTable;
import quietband.response.verdict.Assessment;
import quietband.tuning.cures.CoverageGap;
import quietband.work.BackgroundParts;

/**
 * The page of an assessment and its charts. A thread of its own begins to draw charts while tables are written and gaps
 * are searched; who needs the page draws what is left.
 */
public final class AssessmentPage {

    private final ModelFile file;
    private final BackgroundParts<Charts> charts;

    /** The design on the program's own grid, its charts, and their pictures as they are drawn. */
    private record Charts(FrequencyTable curves, List<FrequencyChart> charts, BackgroundParts<String> pictures) {

        static Charts of(Design design) {
            double[] grid = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
            FrequencyTable curves = FrequencyTable.of(design, grid, 1);
            List<FrequencyChart> charts = new AssessmentCharts(design, curves).all();
            return new Charts(curves, charts, BackgroundParts.on("charts", charts.stream().<Supplier<String>>map(c -> c::svg).toList()));
        }

        /** Every chart as SVG by the name of its file without ending, in the order of the page. */
        Map<String, String> drawn() {
            List<String> svg = pictures.finish();
            Map<String, String> drawn = new LinkedHashMap<>();
            for (int i = 0; i < svg.size(); i++) {
                drawn.put(charts.get(i).name(), svg.get(i));
            }
            return drawn;
        }
    }

    private AssessmentPage(ModelFile file) {
        this.file = file;
        this.charts = BackgroundParts.on("curves", List.of(() -> Charts.of(file.design())));
    }

    /** Begins to draw the charts of a model. */
    public static AssessmentPage begin(ModelFile file) {
        return new AssessmentPage(file);
    }

    /** Writes {@code report.html} and each chart as an SVG file. */
    public void writeTo(ResultDirectory directory, Assessment assessment, List<CoverageGap> gaps, Provenance from) {
        Charts made = charts.finish().get(0);
        AssessmentSources dossier = AssessmentSources.of(file, assessment, made.curves(), gaps, from, directory.target());
        Map<String, String> drawn = made.drawn();
        drawn.forEach((name, svg) -> directory.write(name + ".svg", w -> w.write(svg)));
        String page = html(dossier, drawn);
        directory.write("report.html", w -> w.write(page));
    }

    static String html(AssessmentSources dossier, Map<String, String> charts) {
        return PageTemplates.render("assess.jte", AssessmentView.of(dossier, charts));
    }
}
