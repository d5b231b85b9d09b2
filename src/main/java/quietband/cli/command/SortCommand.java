package quietband.cli.command;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import quietband.cli.option.OptionAmount;
import quietband.cli.terminal.InputErrorException;
import quietband.lot.LotReader;
import quietband.lot.MeasuredLot;
import quietband.lot.SortRule;
import quietband.model.text.FileProblem;
import quietband.model.text.ModelException;
import quietband.report.file.Provenance;
import quietband.report.lot.LotReport;
import quietband.study.lot.SortStudy;
import quietband.units.Dimension;

/** Resonators into classes, and what yield that means. */
@Command(name = "sort", mixinStandardHelpOptions = true,
    description = "Sorts a measured lot (serial,x_ppb_per_g,y_ppb_per_g,z_ppb_per_g; optional standard uncertainties "
        + "x_uncertainty_ppb_per_g and so on) into classes, with the yield and the units to build for a number of good ones.")
public final class SortCommand extends ResultCommand implements Runnable {

    private static final int MOST_LISTED = 50;
    private static final int MOST_CLASSES = 50;

    /** What is done with rows that have something wrong. */
    enum BadRows { STOP, REFUSE, KEEP }

    @Parameters(paramLabel = "LOT.csv", description = "the measured lot")
    private Path lot;

    @Option(names = "--limit", required = true, paramLabel = "SENSITIVITY", description = "what a good unit may have, e.g. \"0.3 ppb/g\"")
    private String limit;

    @Option(names = "--by", paramLabel = "vector|axis", defaultValue = "vector",
        description = "what is held against the limit: the length of the vector or the worst axis; default: ${DEFAULT-VALUE}")
    private SortRule.By by;

    @Option(names = "--bins", paramLabel = "SENSITIVITY,SENSITIVITY",
        description = "rising upper edges of the classes, e.g. \"0.2 ppb/g, 0.3 ppb/g\"; "
        + "default: the limit; one more class holds what is beyond the last")
    private String bins;

    @Option(names = "--guard", paramLabel = "SENSITIVITY", defaultValue = "0 ppb/g",
        description = "how far below the limit a reading must stay to be accepted; default: ${DEFAULT-VALUE}")
    private String guard;

    @Option(names = "--risk", paramLabel = "SHARE", description = "accept only units whose chance to be beyond the limit all the "
        + "same is at most this, e.g. \"2 %%\"; needs uncertainties")
    private String risk;

    @Option(names = "--uncertainty", paramLabel = "SENSITIVITY",
        description = "standard uncertainty of every number where the file states none")
    private String uncertainty;

    @Option(names = "--confidence", paramLabel = "SHARE", defaultValue = "0.95",
        description = "confidence of intervals and of the units to build; default: ${DEFAULT-VALUE}")
    private double confidence;

    @Option(names = "--good-units", paramLabel = "N", defaultValue = "10", description = "good units wanted; default: ${DEFAULT-VALUE}")
    private int goodUnits;

    @Option(names = "--bad-rows", paramLabel = "stop|refuse|keep", defaultValue = "stop",
        description = "rows with something wrong: stop and write nothing; refuse: count them as built and refused; keep: judge "
            + "a repeated serial as a unit of its own and leave the others unjudged and uncounted; default: ${DEFAULT-VALUE}")
    private BadRows badRows;


    @Override
    public void run() {
        MeasuredLot measured = LotReader.read(lot);
        tellBad(measured);
        MeasuredLot judged = badRows == BadRows.REFUSE ? measured.withoutBad() : measured;
        if (uncertainty != null) {
            judged = judged.withSigma(ppb("--uncertainty", uncertainty, false));
        }
        if (judged.size() == 0) {
            throw ModelException.of(lot.toString(), "has no usable row", "write at least one below the header");
        }
        if (risk != null && judged.sigmaPpbPerG().isEmpty()) {
            throw new InputErrorException("--risk needs uncertainties: columns x_uncertainty_ppb_per_g, y_, z_, or --uncertainty");
        }
        Provenance from = output.provenance("sort", measured.file(), measured.hash());
        MeasuredLot lotJudged = judged;
        int refused = badRows == BadRows.REFUSE ? measured.bad().size() : 0;
        write(lot, from, () -> LotReport.of(SortStudy.of(lotJudged, rule(), refused, output.threads()), from));
    }

    private void tellBad(MeasuredLot measured) {
        List<MeasuredLot.BadRow> bad = measured.bad();
        if (bad.isEmpty()) {
            return;
        }
        List<FileProblem> problems = new ArrayList<>();
        String advice = badRows == BadRows.STOP ? "correct it, or choose with --bad-rows refuse or keep" : "";
        bad.stream().limit(MOST_LISTED).forEach(b -> problems.add(new FileProblem(lot.toString(), b.line(), 0, "", b.reason(), advice)));
        if (bad.size() > MOST_LISTED) {
            String where = badRows == BadRows.STOP ? "the first " + MOST_LISTED + " are listed; --bad-rows keep or refuse lists all in "
                + "bad_rows.csv" : "all are in bad_rows.csv";
            problems.add(new FileProblem(lot.toString(), 0, 0, "", bad.size() + " bad rows in all", where));
        }
        if (badRows == BadRows.STOP) {
            throw new ModelException(problems);
        }
        problems.forEach(p -> spec.commandLine().getErr().println(p));
    }

    private SortRule rule() {
        double most = ppb("--limit", limit, true);
        double[] edges = bins == null ? new double[] {most} : edges();
        double band = ppb("--guard", guard, false);
        if (band >= most) {
            throw new InputErrorException("--guard " + guard + ": leaves nothing below the limit of " + limit);
        }
        if (!(confidence > 0 && confidence < 1)) {
            throw new InputErrorException("--confidence " + confidence + ": between 0 and 1, e.g. 0.95");
        }
        if (goodUnits < 1) {
            throw new InputErrorException("--good-units " + goodUnits + ": at least 1");
        }
        return new SortRule(most, by, edges, band, risk == null ? 1 : share(), confidence, goodUnits);
    }

    private double share() {
        double share = OptionAmount.read("--risk", risk, Dimension.RATIO);
        if (!(share > 0 && share < 1)) {
            throw new InputErrorException("--risk " + risk + ": between 0 and 1, e.g. \"2 %\"");
        }
        return share;
    }

    private double[] edges() {
        String[] parts = bins.split(",", -1);
        double[] edges = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            edges[i] = ppb("--bins", parts[i], true);
            if (i > 0 && edges[i] <= edges[i - 1]) {
                throw new InputErrorException("--bins: '" + parts[i].strip() + "' does not rise; write the edges from the least up");
            }
        }
        if (edges.length > MOST_CLASSES) {
            throw new InputErrorException(String.format(Locale.ROOT, "--bins: %d edges; at most %d", edges.length, MOST_CLASSES));
        }
        return edges;
    }

    private static double ppb(String option, String text, boolean positive) {
        double value = OptionAmount.read(option, text, Dimension.SENSITIVITY);
        if (value < 0 || positive && value == 0) {
            throw new InputErrorException(option + ": '" + text.strip() + "' is not " + (positive ? "above" : "at least") + " 0");
        }
        return new BigDecimal(value * 1e9).round(new MathContext(15)).doubleValue();
    }
}
