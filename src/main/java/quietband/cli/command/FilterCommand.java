package quietband.cli.command;

import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import quietband.cli.option.AnalogOptions;
import quietband.cli.option.OptionAmount;
import quietband.cli.option.ResponseOption;
import quietband.cli.option.TrimOptions;
import quietband.cli.terminal.InputErrorException;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.fixedpoint.FixedPoint;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.report.file.Provenance;
import quietband.report.filter.FilterReport;
import quietband.report.filter.NetworkReport;
import quietband.report.filter.TrimReport;
import quietband.study.filter.FilterDesign;
import quietband.units.Dimension;

/** Which digital filter the cancellation should have, and how much error it may have. */
@Command(name = "filter", mixinStandardHelpOptions = true,
    description = "Designs the digital filters of the three sensors together, so that the fullest stack's residual over all three "
        + "axes is smallest; the model's errors count. Writes the changed model with its filter.")
public final class FilterCommand extends TableCommand implements Runnable {

    @Option(names = "--form", paramLabel = "taps|sections", defaultValue = "taps",
        description = "delayed samples, or second-order sections; default: ${DEFAULT-VALUE}")
    private FilterForm form;

    @Option(names = "--count", paramLabel = "N", description = "taps (default 16) or sections (default 2) of each filter")
    private Integer count;

    @Option(names = "--goal", paramLabel = "limit|noise|flat", defaultValue = "flat",
        description = "least largest residual over its limit; least integrated phase noise, nowhere above no cancellation by more "
            + "than 0.01 dB; or least sum of squares over three axes and a log grid of the band (--points); default: ${DEFAULT-VALUE}")
    private FilterGoal goal;

    @Option(names = "--max-gain", paramLabel = "DB", defaultValue = "20 dB",
        description = "largest gain of a filter up to half the sample rate; default: ${DEFAULT-VALUE}")
    private String maxGain;

    @Option(names = "--bits", paramLabel = "N",
        description = "whole numbers of this word length in place of real coefficients, as a table for firmware; refused when that "
            + "costs more than 0.5 dB of the worst ratio")
    private Integer bits;

    @Mixin
    private ResponseOption response;

    @Mixin
    private AnalogOptions analog;

    @Mixin
    private TrimOptions trim;


    @Override
    public void run() {
        ModelFile file = ModelFile.read(model);
        Provenance from = output.provenance("filter", file);
        if (analog.asked() && !trim.asked()) {
            if (count != null) {
                throw new InputErrorException("--count goes with taps and sections; the poles of a network are --analog 1 or --analog 2");
            }
            write(model, from, () -> NetworkReport.of(analog.study(task(file.design())), from));
        } else if (trim.asked()) {
            if (analog.asked() || response.asked() || count != null) {
                throw new InputErrorException("--trim designs no filter: leave --analog, --response and --count out");
            }
            write(model, from, () -> TrimReport.of(trim.study(file), from));
        } else {
            if (bits != null && (bits < FixedPoint.SHORTEST || bits > FixedPoint.LONGEST)) {
                throw new InputErrorException("--bits " + bits + ": between " + FixedPoint.SHORTEST + " and " + FixedPoint.LONGEST);
            }
            write(model, from, () -> FilterReport.of(FilterDesign.of(file, task(file.design()), Optional.ofNullable(bits)), from));
        }
    }

    private FilterTask task(Design design) {
        int n = count != null ? count : form == FilterForm.TAPS ? 16 : 2;
        return new FilterTask(design, form, n, goal,
            StrictMath.pow(10, OptionAmount.read("--max-gain", maxGain, Dimension.DECIBEL) / 20),
            frequencies.frequencies(design.requirement()),
            design.cancellation().flatMap(c -> response.path(design, spec.commandLine().getErr())));
    }
}
