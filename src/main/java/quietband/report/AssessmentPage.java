package quietband.report;

import java.util.LinkedHashMap;
import java.util.Map;

/** The page of an assessment and its charts. */
public final class AssessmentPage {

    private AssessmentPage() { }

    /** Writes {@code report.html} and each chart as an SVG file. */
    public static void write(ResultDirectory directory, Dossier dossier) {
        Map<String, String> charts = charts(dossier);
        charts.forEach((name, svg) -> directory.write(name + ".svg", w -> w.write(svg)));
        String page = html(dossier, charts);
        directory.write("report.html", w -> w.write(page));
    }

    /** The charts as SVG by name. */
    static Map<String, String> charts(Dossier dossier) {
        Map<String, String> charts = new LinkedHashMap<>();
        new AssessmentCharts(dossier.assessment().design(), dossier.curves()).all()
            .forEach((name, chart) -> charts.put(name, chart.svg()));
        return charts;
    }

    static String html(Dossier dossier, Map<String, String> charts) {
        return Pages.render("assess.jte", AssessmentView.of(dossier, charts));
    }
}
