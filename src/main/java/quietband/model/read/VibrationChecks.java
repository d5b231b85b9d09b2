package quietband.model.read;

import java.util.Set;
import quietband.model.Axis;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.model.text.FileProblems;

/** What must hold in {@code vibration} and {@code requirement}. */
final class VibrationChecks {

    private final WrittenValue vibration;
    private final WrittenValue requirement;
    private final ReferencedFiles references;
    private final FileProblems problems;

    VibrationChecks(WrittenValue root, ReferencedFiles references, FileProblems problems) {
        this.vibration = root.get("vibration");
        this.requirement = root.get("requirement");
        this.references = references;
        this.problems = problems;
    }

    void run() {
        for (String axis : FormatNode.Spread.XYZ) {
            random(vibration.get("random").get(axis));
        }
        rises(requirement.get("band"), 0, Double.POSITIVE_INFINITY);
        WrittenValue jitter = requirement.get("jitter");
        if (jitter.given()) {
            rises(jitter, requirement.get("band").get("from").number(), requirement.get("band").get("to").number());
        }
        WrittenValue residual = requirement.get("residual");
        if (residual.form() instanceof FormatNode.WordOr && residual.good()) {
            derived(residual);
        }
        WrittenValue tones = requirement.get("tones");
        if (tones.given() && vibration.get("tones").items().isEmpty()) {
            problems.warn(tones.node(), tones.path(), "asks nothing without vibration.tones", "");
        }
    }

    private void random(WrittenValue axis) {
        if (!axis.given()) {
            return;
        }
        WrittenValue file = axis.get("file");
        WrittenValue points = axis.get("points");
        if (file.given() == points.given()) {
            problems.add(axis.node(), axis.path(), file.given() ? "has both file and points" : "has no profile",
                file.given() ? "keep one" : "write file: profile.csv or points: [{frequency: .., density: ..}]");
        } else if (file.given()) {
            ProfileFile.load(file, references);
        }
    }

    private void rises(WrittenValue block, double defaultFrom, double defaultTo) {
        WrittenValue from = block.get("from");
        WrittenValue to = block.get("to");
        double low = from.absent(0) ? defaultFrom : from.number();
        double high = to.absent(0) ? defaultTo : to.number();
        if (low >= high) {
            problems.add(to.given() ? to.node() : block.node(), block.path(), "'to' is not above 'from'",
                "write the lower frequency as from");
        }
    }

    private void derived(WrittenValue residual) {
        if (!requirement.get("phase_noise").given()) {
            problems.add(residual.node(), residual.path(), "from_phase_noise needs requirement.phase_noise",
                "add it or write limit points");
        }
        WrittenValue axes = vibration.get("axes");
        boolean any = FormatNode.Spread.XYZ.stream().anyMatch(a -> vibration.get("random").get(a).given()
            && (!(axes.value() instanceof Set<?> driven) || driven.contains(Axis.of(a))));
        if (!any) {
            problems.add(residual.node(), residual.path(), "from_phase_noise needs vibration.random on a driven axis",
                "add it or write limit points");
        }
    }
}
