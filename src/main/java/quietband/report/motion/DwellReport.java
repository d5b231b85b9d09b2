package quietband.report.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.motion.run.Dwell;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.QuantityText;
import quietband.report.page.PageTable;
import quietband.report.page.Report;
import quietband.study.motion.DwellStudy;

/** A dwell: summary, lines of the spectrum, trace, page, text; the prediction of the frequency domain beside it. */
public final class DwellReport {

    private static final double PPB = 1e9;
    private static final double SHOWN_PERIODS = 8;

    private DwellReport() { }

    /** The report. */
    public static Report of(DwellStudy s, Provenance from) {
        Dwell.Result r = s.traced().result();
        Report report = new Report(s.design().title(), from).of(s.design());
        String agreement = agreement(s);
        String contacts = MotionTables.contactWords(r.contacts());
        String clipped = r.clipped()[0] + " sensor samples and " + r.clipped()[1] + " port values are clipped.";
        report.table("spectrum.csv", "line,frequency_hz," + r.stacks().stream().map(k -> k.key() + "_peak_ppb")
            .collect(Collectors.joining(",")), s.lines(), (csv, line) -> {
                csv.cell(line.name()).cell(line.frequencyHz());
                line.peak().forEach(p -> csv.cell(p * PPB));
            });
        MotionTables.trace(report, List.of(s.request().axis().letter()), List.of(s.traced().trace()));
        report.summary(json -> fields(json, s));
        report.line(report.title()).line(what(s).replace("; ", "\n")).line("");
        report.line("%-10s %14s %10s %18s %10s", "stack", "ppb/g", "deg", "predicted ppb/g", "deg");
        for (int k = 0; k < r.stacks().size(); k++) {
            Stack stack = r.stacks().get(k);
            report.line("%-10s %14.6g %10.3f %18.6g %10.3f", stack.key(), r.sensitivityPerG(stack) * PPB, r.phaseDeg(stack),
                s.predicted().get(k).perG() * PPB, s.predicted().get(k).phaseDeg());
        }
        report.line("").line(agreement).line(contacts).line(clipped).wrapped();
        report.head("DWELL", "none", agreement);
        report.part("Result").say(what(s), agreement, contacts, clipped).table("Component at the drive's frequency in the periodic steady "
            + "state", List.of("stack", "time domain, ppb/g", "phase, deg", "frequency domain, ppb/g", "phase, deg"),
            IntStream.range(0, r.stacks().size()).mapToObj(k -> row(r, k, s.predicted().get(k))).toList());
        report.part("Lines").table(lines(s));
        Report.Part motion = report.part("Motion").say("The last periods.");
        MotionTables.charts("", s.traced().trace().last(SHOWN_PERIODS / s.request().frequencyHz())).forEach(c -> motion.inline(c.svg()));
        return report;
    }

    private static List<String> row(Dwell.Result r, int k, DwellStudy.Predicted p) {
        Stack s = r.stacks().get(k);
        return List.of(s.key(), QuantityText.ppb(r.sensitivityPerG(s)), NumberFormat.brief(r.phaseDeg(s), 4),
            QuantityText.ppb(p.perG()), NumberFormat.brief(p.phaseDeg(), 4));
    }

    private static PageTable lines(DwellStudy s) {
        List<String> head = new ArrayList<>(List.of("line", "frequency"));
        s.traced().result().stacks().forEach(k -> head.add(k.key() + ", ppb"));
        List<List<String>> rows = s.lines().stream().map(line -> Stream.concat(Stream.of(line.name(), QuantityText.hz(line.frequencyHz())),
            line.peak().stream().map(p -> NumberFormat.brief(p * PPB, 3))).toList()).toList();
        return new PageTable("Lines of the fractional frequency, peak", head, rows);
    }

    private static void fields(Json json, DwellStudy s) {
        Dwell.Request request = s.request();
        Dwell.Result r = s.traced().result();
        json.field("title", s.design().title()).field("drive", "dwell").field("axis", request.axis().letter())
            .field("frequency_hz", request.frequencyHz()).field("peak_g", request.peakG()).field("linear", request.linear())
            .field("simulated_s", r.simulated()).field("real_time_factor", r.simulated() / s.traced().elapsed())
            .field("settled", r.settled());
        json.object("stacks", () -> {
            for (int k = 0; k < r.stacks().size(); k++) {
                Stack stack = r.stacks().get(k);
                DwellStudy.Predicted p = s.predicted().get(k);
                int at = k;
                json.object(stack.key(), () -> json.field("sensitivity_ppb_per_g", r.sensitivityPerG(stack) * PPB)
                    .field("phase_deg", r.phaseDeg(stack)).field("predicted_ppb_per_g", p.perG() * PPB)
                    .field("predicted_phase_deg", p.phaseDeg()).field("peak_ppb", s.traced().peak()[at] * PPB)
                    .field("rms_ppb", s.traced().rms()[at] * PPB));
            }
        });
        json.object("travel", () -> Axis.ALL.forEach(a -> json.object(a.letter(), () ->
            json.field("peak_mm", r.travel().get(a) * 1e3))));
        MotionTables.contacts(json, r.contacts());
        json.field("clipped_samples", r.clipped()[0]).field("clipped_port_samples", r.clipped()[1]).field("agreement", agreement(s));
    }

    private static String agreement(DwellStudy s) {
        String off = NumberFormat.text("%.2g dB", s.worstDb());
        if (s.worstDb() < 0.05) {
            return "Time and frequency domain agree: they differ by " + off + " at most in the stacks that leave over 1 % of the bare "
                + "sensitivity.";
        }
        return s.request().linear() ? "Time and frequency domain do NOT agree: they differ by " + off + "."
            : "At this level the motion differs from the linear prediction by " + off + ".";
    }

    private static String what(DwellStudy s) {
        Dwell.Request request = s.request();
        double simulated = s.traced().result().simulated();
        return NumberFormat.text("%s along %s, %.6g g peak, %s; %.4g s simulated, %.3g times real time.",
            QuantityText.hz(request.frequencyHz()), request.axis().letter(), request.peakG(), request.linear() ? "linear"
            : "with clipping, quantising, slack, stops and curvature", simulated, simulated / s.traced().elapsed());
    }
}
