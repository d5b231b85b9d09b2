package quietband.report.motion;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import quietband.model.Stack;
import quietband.motion.platform.ContactRecord;
import quietband.motion.run.MotionTrace;
import quietband.report.chart.ChartLine;
import quietband.report.chart.ChartStyle;
import quietband.report.chart.TimeChart;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.report.page.Report;

/** What the reports of all simulations share: the trace, contacts, charts over time. */
final class MotionTables {

    private static final double PPB = 1e9;

    private MotionTables() { }

    /** {@code motion.csv}: one trace after another, with the axis that moved when there are several. */
    static void trace(Report report, List<String> axes, List<MotionTrace> traces) {
        List<String> header = new ArrayList<>(traces.size() > 1 ? List.of("axis") : List.of());
        header.addAll(List.of("time_s", "drive_x_g", "drive_y_g", "drive_z_g", "platform_x_mm", "platform_y_mm", "platform_z_mm"));
        traces.get(0).stacks().forEach(s -> header.add(s.key() + "_ppb"));
        report.table("motion.csv", header, csv -> rows(csv, axes, traces));
    }

    private static void rows(CsvWriter csv, List<String> axes, List<MotionTrace> traces) throws IOException {
        for (int t = 0; t < traces.size(); t++) {
            MotionTrace trace = traces.get(t);
            for (int k = 0; k < trace.size(); k++) {
                if (traces.size() > 1) {
                    csv.cell(axes.get(t));
                }
                csv.cell(trace.startS() + k / trace.rateHz());
                for (double[] a : trace.drive()) {
                    csv.cell(a[k]);
                }
                for (double[] q : trace.motion()) {
                    csv.cell(q[k] * 1e3);
                }
                for (double[] y : trace.y()) {
                    csv.cell(y[k] * PPB);
                }
                csv.end();
            }
        }
    }

    /** Acceleration of the housing and fractional frequency of the stacks over time. */
    static List<TimeChart> charts(String axis, MotionTrace trace) {
        double[] t = IntStream.range(0, trace.size()).mapToDouble(k -> trace.startS() + k / trace.rateHz()).toArray();
        List<ChartLine> drive = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            if (Arrays.stream(trace.drive()[i]).anyMatch(a -> a != 0)) {
                drive.add(new ChartLine("housing " + "xyz".charAt(i) + ", g", t, trace.drive()[i], ChartStyle.number(i)));
            }
        }
        List<ChartLine> y = new ArrayList<>();
        for (Stack s : trace.stacks()) {
            double[] ppb = Arrays.stream(trace.y()[trace.stacks().indexOf(s)]).map(v -> v * PPB).toArray();
            y.add(new ChartLine(s.key(), t, ppb, ChartStyle.of(s)));
        }
        String of = axis.isEmpty() ? "" : "-" + axis;
        return List.of(new TimeChart("chart-drive" + of, "Acceleration of the housing over time", "acceleration, g", drive),
            new TimeChart("chart-frequency" + of, "Fractional frequency over time", "fractional frequency, ppb", y));
    }

    static void contacts(Json json, List<ContactRecord> contacts) {
        json.field("contacts", contacts.stream().filter(ContactRecord::stop).mapToLong(ContactRecord::times).sum());
        json.field("slack_times", contacts.stream().filter(c -> !c.stop()).mapToLong(ContactRecord::times).sum());
        json.field("slack_s", contacts.stream().filter(c -> !c.stop()).mapToDouble(ContactRecord::duration).sum());
        json.objects("contact_list", contacts.stream().filter(c -> c.times() > 0).toList(), c -> json.field("name", c.label())
            .field("times", c.times()).field("duration_s", c.duration()));
    }

    static String contactWords(List<ContactRecord> contacts) {
        List<String> parts = new ArrayList<>();
        contacts.stream().filter(c -> c.times() > 0).forEach(c -> parts.add(c.label() + (c.stop() ? " touched " : " slack ")
            + QuantityText.count(c.times(), "time") + " for " + NumberFormat.brief(c.duration(), 3) + " s"));
        return parts.isEmpty() ? "No stop is touched and no spring goes slack." : String.join("; ", parts) + ".";
    }
}
