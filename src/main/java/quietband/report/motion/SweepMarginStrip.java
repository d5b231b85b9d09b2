package quietband.report.motion;

import java.util.List;
import quietband.demand.ResidualDemand;
import quietband.model.Design;
import quietband.motion.run.SineSweep;
import quietband.report.assess.MarginStrip;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.file.NumberFormat;
import quietband.report.page.StackName;

/** The band strip of a sweep: one row per stack, its margin over the band above and below a middle line. */
final class SweepMarginStrip {

    private static final int ROW = 64;

    private SweepMarginStrip() { }

    /** One picture 1000 wide; empty without a limit or with fewer than two frequencies in the band. */
    static String svg(Design design, SineSweep.Result result) {
        ResidualDemand demand = new ResidualDemand(design);
        List<SineSweep.Point> points = result.points().stream().filter(p -> p.frequencyHz() >= design.requirement().fromHz()
            && p.frequencyHz() <= design.requirement().toHz()).toList();
        if (!demand.asked() || points.size() < 2) {
            return "";
        }
        int height = ROW * result.stacks().size() + 24;
        StringBuilder svg = new StringBuilder(NumberFormat.text("<svg xmlns=\"http://www.w3.org/2000/svg\" "
            + "viewBox=\"0 0 1000 %d\" role=\"img\" font-family=\"sans-serif\" font-size=\"14\"><title>Margin of each stack over the "
            + "band</title>", height));
        double[] x = points.stream().mapToDouble(p -> MarginStrip.place(design, p.frequencyHz())).toArray();
        for (int s = 0; s < result.stacks().size(); s++) {
            double[] margin = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                SineSweep.Point p = points.get(i);
                margin[i] = MarginStrip.shown(-demand.overDb(p.frequencyHz(), ResidualDemand.squares(p.residual()[s])));
            }
            ChartLine line = new ChartLine("", x, margin, ChartStyle.LIMIT);
            svg.append(NumberFormat.text("<g transform=\"translate(0 %d)\"><text x=\"0\" y=\"14\">%s</text>"
                + "<g transform=\"translate(0 18)\"><rect width=\"1000\" height=\"40\" fill=\"#f2f3f4\"/>"
                + "<polygon fill=\"#2a86c8\" points=\"%s\"/><polygon fill=\"#b3122e\" points=\"%s\"/>"
                + "<path d=\"M0 20H1000\" stroke=\"#18222b\"/></g></g>", ROW * s, StackName.capital(result.stacks().get(s)),
                MarginStrip.area(line, true), MarginStrip.area(line, false)));
        }
        for (MarginStrip.Tick t : MarginStrip.ticks(design)) {
            double at = 10 * Double.parseDouble(t.percent());
            svg.append(NumberFormat.text("<text x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">%s</text>", at, height - 8,
                at < 1 ? "start" : at > 999 ? "end" : "middle", t.text()));
        }
        return svg.append("</svg>").toString();
    }
}
