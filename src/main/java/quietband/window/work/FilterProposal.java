package quietband.window.work;

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
import quietband.model.Axis;
import quietband.model.DigitalFilter;
import quietband.model.Requirement;
import quietband.model.edit.ModelFile;
import quietband.spectrum.LogGrid;
import quietband.units.Amounts;
import quietband.window.bench.ModelSection;

/** {@code filter}: taps of the cancellation's filter, jointly over three axes, written into the model itself. */
final class FilterProposal implements Proposal {

    private static final Pattern ANSWER = Pattern.compile("(\\d{1,3})\\s+(flat|limit|noise)");
    private static final double MOST_GAIN = 10;

    @Override
    public String name() {
        return "filter";
    }

    @Override
    public ModelSection section() {
        return ModelSection.CANCELLATION;
    }

    @Override
    public Optional<Question> question() {
        return Optional.of(new Question("How many taps, and what counts: flat (least squares), limit or noise?", "16 flat"));
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
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
        return new Offer(plain.withValue("cancellation.path.taps", taps(found.filters())), "puts " + m.group(1)
            + " taps into each axis' filter");
    }

    private static String taps(List<DigitalFilter> filters) {
        return Axis.ALL.stream().map(a -> a.letter() + ": [" + DoubleStream.of(filters.get(a.ordinal()).taps())
            .mapToObj(Amounts::print).collect(Collectors.joining(", ")) + "]").collect(Collectors.joining(", ", "{", "}"));
    }
}
