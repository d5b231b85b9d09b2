package quietband.window;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.identification.Fit;
import quietband.identification.Fitted;
import quietband.identification.MeasuredResponse;
import quietband.identification.Source;
import quietband.model.ModelFile;
import quietband.model.Stack;

/** {@code fit}: numbers of the model from a measured response. */
final class FitProposal implements Proposal {

    @Override
    public String name() {
        return "fit";
    }

    @Override
    public Section section() {
        return Section.PLATFORM;
    }

    @Override
    public Optional<Question> question() {
        return Optional.of(new Question("File; what it holds; which numbers are to be found:",
            "measured.csv; transmissibility; platform.springs.stiffness, platform.springs.damping"));
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
        String[] part = answer.split(";");
        List<String> kinds = Arrays.stream(Source.Asked.values()).map(a -> a.name().toLowerCase(Locale.ROOT)).toList();
        if (part.length != 3 || !kinds.contains(part[1].strip())) {
            throw new IllegalArgumentException("'" + answer + "' is not file; " + String.join(" or ", kinds) + "; numbers to be found");
        }
        Path beside = model.path().toAbsolutePath().resolveSibling(part[0].strip());
        Source source = Source.of(String.valueOf(beside.getFileName()), MeasuredResponse.read(beside),
            Source.Asked.valueOf(part[1].strip().toUpperCase(Locale.ROOT)), Stack.fullest(model.design()));
        List<String> free = Arrays.stream(part[2].split(",")).map(String::strip).toList();
        Fitted fitted = Fit.of(model, List.of(source), free, Fit.Settings.USUAL);
        return new Offer(fitted.after(), fitted.values().size() + " numbers found");
    }
}
