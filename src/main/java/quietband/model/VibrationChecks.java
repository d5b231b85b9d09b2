package quietband.model;

import java.util.Set;

/** What must hold in {@code vibration} and {@code requirement}. */
final class VibrationChecks {

    private final Written vibration;
    private final Written requirement;
    private final References references;
    private final Problems problems;

    VibrationChecks(Written root, References references, Problems problems) {
        this.vibration = root.get("vibration");
        this.requirement = root.get("requirement");
        this.references = references;
        this.problems = problems;
    }

    void run() {
        for (String axis : Form.Spread.XYZ) {
            random(vibration.get("random").get(axis));
        }
        rises(requirement.get("band"), 0, Double.POSITIVE_INFINITY);
        Written jitter = requirement.get("jitter");
        if (jitter.given()) {
            rises(jitter, requirement.get("band").get("from").number(), requirement.get("band").get("to").number());
        }
        Written residual = requirement.get("residual");
        if (residual.form() instanceof Form.WordOr && residual.good()) {
            derived(residual);
        }
        Written tones = requirement.get("tones");
        if (tones.given() && vibration.get("tones").items().isEmpty()) {
            problems.warn(tones.node(), tones.path(), "asks nothing without vibration.tones", "");
        }
    }

    private void random(Written axis) {
        if (!axis.given()) {
            return;
        }
        Written file = axis.get("file");
        Written points = axis.get("points");
        if (file.given() == points.given()) {
            problems.add(axis.node(), axis.path(), file.given() ? "has both file and points" : "has no profile",
                file.given() ? "keep one" : "write file: profile.csv or points: [{frequency: .., density: ..}]");
        } else if (file.given()) {
            ProfileFile.load(file, references);
        }
    }

    private void rises(Written block, double defaultFrom, double defaultTo) {
        Written from = block.get("from");
        Written to = block.get("to");
        double low = from.absent(0) ? defaultFrom : from.number();
        double high = to.absent(0) ? defaultTo : to.number();
        if (low >= high) {
            problems.add(to.given() ? to.node() : block.node(), block.path(), "'to' is not above 'from'",
                "write the lower frequency as from");
        }
    }

    private void derived(Written residual) {
        if (!requirement.get("phase_noise").given()) {
            problems.add(residual.node(), residual.path(), "from_phase_noise needs requirement.phase_noise",
                "add it or write limit points");
        }
        Written axes = vibration.get("axes");
        boolean any = Form.Spread.XYZ.stream().anyMatch(a -> vibration.get("random").get(a).given()
            && (!(axes.value() instanceof Set<?> driven) || driven.contains(Axis.of(a))));
        if (!any) {
            problems.add(residual.node(), residual.path(), "from_phase_noise needs vibration.random on a driven axis",
                "add it or write limit points");
        }
    }
}
