package quietband.window.work;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.identification.fit.FitResult;
import quietband.identification.fit.ModelFit;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.window.bench.ModelSection;

/** {@code fit}: numbers of the model from a measured response. */
final class FitProposal implements Proposal {

    @Override
    public String name() {
        return "fit";
    }

    @Override
    public ModelSection section() {
        return ModelSection.PLATFORM;
    }

    @Override
    public Optional<Question> question() {
        return Optional.of(new Question("File; what it holds; which numbers are to be found:",
            "measured.csv; transmissibility; platform.springs.stiffness, platform.springs.damping"));
    }

    @Override
    public Offer offer(ModelFile model, String answer) {
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
        return new Offer(fitted.after(), fitted.values().size() + " numbers found");
    }
}
