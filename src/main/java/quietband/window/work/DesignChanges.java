package quietband.window.work;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import quietband.filter.FilterForm;
import quietband.filter.FilterGoal;
import quietband.filter.FilterTask;
import quietband.filter.design.FilterDesigner;
import quietband.filter.fixedpoint.FoundFilters;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.identification.fit.FitResult;
import quietband.identification.fit.ModelFit;
import quietband.model.Axis;
import quietband.model.DigitalFilter;
import quietband.model.Requirement;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.report.file.NumberFormat;
import quietband.report.file.QuantityText;
import quietband.spectrum.LogGrid;
import quietband.study.orient.OrientStudy;
import quietband.tuning.orient.Orientation;
import quietband.tuning.parts.SpringRequest;
import quietband.tuning.springs.SpringAnswer;
import quietband.tuning.springs.SpringPlanner;
import quietband.units.Amounts;
import quietband.units.Dimension;

/** The changes of a design that commands propose; each may take seconds, and says in its error what to do. */
final class DesignChanges {

    private static final Pattern ANSWER = Pattern.compile("(\\d{1,3})\\s+(flat|limit|noise)");
    private static final double MOST_GAIN = 10;

    private DesignChanges() { }

    /** {@code springs}: rates, places and parts for a wanted natural frequency on every axis. */
    static Proposal.Offer springs(ModelFile model, String answer) {
        double corner = Amounts.read(answer, Dimension.FREQUENCY);
        SpringRequest wish = new SpringRequest(Optional.of(Vec.all(corner)), Optional.empty(), false, SpringRequest.Kind.SUITED,
            Optional.empty(), true, Optional.empty(), BackgroundMonteCarlo.SEED);
        SpringAnswer found = SpringPlanner.plan(model, wish, 1, judged -> { });
        Vec reached = found.cornerHz();
        return new Proposal.Offer(found.changed(), "natural frequencies at " + QuantityText.hz(reached.x())
            + ", " + QuantityText.hz(reached.y()) + ", "
            + QuantityText.hz(reached.z()) + (found.met() ? "" : "; a target or check is not met"));
    }

    /** {@code filter}: taps of the cancellation's filter, jointly over three axes, written into the model itself. */
    static Proposal.Offer filter(ModelFile model, String answer) {
        Matcher m = ANSWER.matcher(answer.strip().toLowerCase(Locale.ROOT));
        if (!m.matches()) {
            throw new IllegalArgumentException("'" + answer + "' does not say how many taps and what counts; write e.g. 16 flat");
        }
        Requirement band = model.design().requirement();
        FilterTask task = new FilterTask(model.design(), FilterForm.TAPS, Integer.parseInt(m.group(1)),
            FilterGoal.valueOf(m.group(2).toUpperCase(Locale.ROOT)), MOST_GAIN,
            LogGrid.between(WindowWorker.POINTS, band.fromHz(), band.toHz()), Optional.empty());
        FoundFilters found = FilterDesigner.design(task);
        ModelFile plain = model.without("cancellation.path.filter").without("cancellation.path.taps")
            .without("cancellation.path.sections");
        return new Proposal.Offer(plain.withValue("cancellation.path.taps", taps(found.filters())), "puts " + m.group(1)
            + " taps into each axis' filter");
    }

    private static String taps(List<DigitalFilter> filters) {
        return Axis.ALL.stream().map(a -> a.letter() + ": [" + DoubleStream.of(filters.get(a.ordinal()).taps())
            .mapToObj(Amounts::print).collect(Collectors.joining(", ")) + "]").collect(Collectors.joining(", ", "{", "}"));
    }

    /** {@code fit}: numbers of the model from a measured response. */
    static Proposal.Offer fit(ModelFile model, String answer) {
        String[] part = answer.split(";");
        List<String> kinds = Arrays.stream(MeasuredFile.Asked.values()).map(a -> a.name().toLowerCase(Locale.ROOT)).toList();
        if (part.length != 3 || !kinds.contains(part[1].strip())) {
            throw new IllegalArgumentException("'" + answer + "' is not file; " + String.join(" or ", kinds) + "; numbers to be found");
        }
        Path beside = model.path().toAbsolutePath().resolveSibling(part[0].strip());
        MeasuredFile source = MeasuredFile.of(String.valueOf(beside.getFileName()), MeasuredResponse.read(beside),
            MeasuredFile.Asked.valueOf(part[1].strip().toUpperCase(Locale.ROOT)), Stack.fullest(model.design()));
        List<String> free = Arrays.stream(part[2].split(",")).map(String::strip).toList();
        FitResult fitted = ModelFit.of(model, List.of(source), free, ModelFit.Settings.USUAL);
        return new Proposal.Offer(fitted.after(), fitted.values().size() + " numbers found");
    }

    /** {@code orient}: the turn of the resonator that serves best as seen through platform and cancellation. */
    static Proposal.Offer orient(ModelFile model) {
        if (!(model.design().oscillator().resonator().sensitivityPerG().length() > 0)) {
            throw new IllegalArgumentException("oscillator.resonator.sensitivity is 0 on every axis: there is nothing to turn");
        }
        Orientation best = Orientation.of(model.design(), Orientation.Goal.RESIDUAL);
        return new Proposal.Offer(OrientStudy.turned(model, best.turn()), "turns the resonator by "
            + NumberFormat.brief(Math.toDegrees(best.turn().angle()), 4) + " deg");
    }
}
