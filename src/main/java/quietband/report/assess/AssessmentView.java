package quietband.report.assess;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.FileSource;
import quietband.report.page.Caution;
import quietband.report.page.PageHead;
import quietband.report.page.PageTable;
import quietband.report.page.VerdictSentence;
import quietband.response.verdict.Assessment;
import quietband.study.assess.DesignAssessment;
import quietband.study.assess.KnownYield;

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
 * @param causes    table; no rows without a cancellation
 * @param vibration table
 * @param warnings  where the linear figures stop holding
 * @param study     that it is of
 */
public record AssessmentView(PageHead head, List<RequirementRow> asked, List<StackLine> stacks, List<MarginStrip> strips,
                             List<MarginStrip.Tick> ticks, List<GapLine> gaps, String yield, Map<String, String> charts,
                             PageTable tones, PageTable modes, PageTable travel, PageTable causes, PageTable vibration,
                             List<String> warnings, DesignAssessment study) {

    /** The model file as read. */
    public String modelText() {
        return study.file().text();
    }

    /** Where the figures of files come from. */
    public List<String> sources() {
        return FileSource.of(study.file().files());
    }

    /** Cautions of the page, paragraph by paragraph. */
    public List<String> cautions() {
        return Caution.paragraphs(study.assessment().design());
    }

    /** What the model assumes. */
    public String assumptions() {
        return Caution.assumptions(study.assessment().design());
    }

    static AssessmentView of(DesignAssessment s, Provenance from, Map<String, String> charts) {
        Assessment a = s.assessment();
        Design design = a.design();
        String sentence = VerdictSentence.sentence(a);
        String why = sentence.contains(": ") ? sentence.substring(sentence.indexOf(": ") + 2) : sentence;
        PageHead head = new PageHead(design.title().isEmpty() ? from.input() : design.title(), VerdictSentence.words(a),
            VerdictSentence.kind(a), why, from, PageHead.today());
        return new AssessmentView(head, RequirementRow.of(a.requirements(), design, profile(s.file())), StackLine.of(a.verdicts()),
            MarginStrip.of(design, s.curves(), a.verdicts()), MarginStrip.ticks(design),
            s.gaps().stream().map(g -> GapLine.of(g, g.stack() == a.fullest())).toList(), yieldWords(s.yield()), charts,
            AssessmentGrids.tones(a), AssessmentGrids.modes(a), AssessmentGrids.travel(a), AssessmentGrids.contributions(a, s.worst()),
            AssessmentGrids.vibration(a), a.warnings(), s);
    }

    /** Names of the vibration profiles the model refers to; empty when it is written in the model. */
    private static String profile(ModelFile file) {
        return file.files().entrySet().stream()
            .filter(e -> new String(e.getValue(), StandardCharsets.UTF_8).contains("density_g2_per_hz"))
            .map(e -> e.getKey().substring(e.getKey().lastIndexOf('/') + 1)).collect(Collectors.joining(", "));
    }

    private static String yieldWords(Optional<KnownYield> known) {
        return known.map(y -> !y.readable() ? "Yield not computed: summary.json of tolerance cannot be read."
            : NumberFormat.text("%.1f %% of units good (%.1f to %.1f %% at %.0f %% confidence, %s units).", 100 * y.estimate(),
                100 * y.low(), 100 * y.high(), 100 * y.confidence(), y.units()))
            .orElse("Yield not computed: no result of tolerance for this model hash stands beside this one.");
    }

    /** Whether the stack combined has no gap while others have. */
    public boolean whole() {
        return gaps.stream().noneMatch(g -> g.stack().equals(fullest()));
    }

    /** The stack combined. */
    public String fullest() {
        return stacks.get(stacks.size() - 1).name().toLowerCase(Locale.ROOT);
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
