package quietband.report.assess;

import java.util.List;
import java.util.Map;
import quietband.model.Design;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.VerdictSentence;
import quietband.response.verdict.Assessment;

/**
 * What the template of an assessment's page shows.
 *
 * @param head      title, origin, verdict
 * @param asked     what is asked and how it came out
 * @param stacks    what each stack covers
 * @param strips    the band strip; empty without a residual limit
 * @param ticks     of the band strip
 * @param gaps      with causes and cures
 * @param yield     a sentence
 * @param charts    SVG by name of the chart
 * @param tones     table
 * @param modes     table
 * @param travel    table
 * @param causes    table; no rows without a correction
 * @param vibration table
 * @param warnings  where the linear figures stop holding
 * @param modelText the model file as read
 */
public record AssessmentView(PageHead head, List<RequirementRow> asked, List<StackLine> stacks, List<MarginStrip> strips,
                             List<MarginStrip.Tick> ticks, List<GapLine> gaps, String yield, Map<String, String> charts,
                             PageTable tones, PageTable modes, PageTable travel, PageTable causes, PageTable vibration,
                             List<String> warnings,
                             String modelText) {

    static AssessmentView of(AssessmentSources d, Map<String, String> charts) {
        Assessment a = d.assessment();
        Design design = a.design();
        Boolean met = a.requirementMet().orElse(null);
        String verdict = met == null ? "NO VERDICT" : met ? "HOLDS" : "DOES NOT HOLD";
        String kind = met == null ? "none" : met ? "holds" : "fails";
        String sentence = VerdictSentence.sentence(a);
        String why = sentence.contains(": ") ? sentence.substring(sentence.indexOf(": ") + 2) : sentence;
        PageHead head = new PageHead(design.title().isEmpty() ? d.from().input() : design.title(), verdict, kind, why, d.from(), d.date());
        return new AssessmentView(head, RequirementRow.of(a.requirements(), design, d.profile()), StackLine.of(a.verdicts()),
            MarginStrip.of(design, d.curves(), a.verdicts()), MarginStrip.ticks(design), d.gaps().stream().map(g -> GapLine.of(g,
            g.stack() == a.fullest())).toList(),
            d.yield(), charts, AssessmentGrids.tones(a), AssessmentGrids.modes(a), AssessmentGrids.travel(a),
            AssessmentGrids.contributions(a), AssessmentGrids.vibration(a), a.warnings(), d.modelText());
    }

    /** Whether the stack with every measure has no gap while others have. */
    public boolean whole() {
        return gaps.stream().noneMatch(g -> g.stack().equals(fullest()));
    }

    /** The stack with every measure. */
    public String fullest() {
        return stacks.get(stacks.size() - 1).name().toLowerCase(java.util.Locale.ROOT);
    }

    /** A chart as SVG; empty when the design has none of this name. */
    public String chart(String name) {
        return charts.getOrDefault(name, "");
    }

    /** Whether the design has a chart of this name. */
    public boolean has(String name) {
        return charts.containsKey(name);
    }
}
