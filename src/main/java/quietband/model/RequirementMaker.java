package quietband.model;

import java.util.Optional;
import quietband.spectrum.LogCurve;

/** Compiles the block {@code requirement}. */
final class RequirementMaker {

    private RequirementMaker() { }

    static Made<Requirement> compile(Written block, double[] nominal) {
        int from = block.get("band").get("from").slot();
        int to = block.get("band").get("to").slot();
        boolean vector = block.get("by").text().equals("vector");
        Written limit = block.get("residual");
        boolean derived = limit.form() instanceof Form.WordOr && limit.given();
        Made<Optional<LogCurve>> residual = Made.curve(limit, "frequency", "limit",
            (f, l) -> LogCurve.logLog(f, l, LogCurve.Outside.CONSTANT), nominal);
        Made<Optional<LogCurve>> noise =
            Made.curve(block.get("phase_noise"), "offset", "limit", LogCurve::decibel, nominal);
        Made<Optional<LogCurve>> tones =
            Made.curve(block.get("tones"), "frequency", "limit", LogCurve::decibel, nominal);
        Made<Optional<Requirement.Jitter>> jitter = jitter(block.get("jitter"), from, to);
        Made<Optional<Requirement.Yield>> good = share(block.get("yield"));
        return v -> new Requirement(v[from], v[to], vector, residual.from(v), derived, noise.from(v), tones.from(v),
            jitter.from(v), good.from(v));
    }

    private static Made<Optional<Requirement.Jitter>> jitter(Written block, int bandFrom, int bandTo) {
        int limit = block.get("limit").slot();
        int from = block.get("from").given() ? block.get("from").slot() : bandFrom;
        int to = block.get("to").given() ? block.get("to").slot() : bandTo;
        return block.given() ? v -> Optional.of(new Requirement.Jitter(v[limit], v[from], v[to]))
            : v -> Optional.empty();
    }

    private static Made<Optional<Requirement.Yield>> share(Written block) {
        int share = block.get("share").slot();
        int confidence = block.get("confidence").slot();
        return block.given() ? v -> Optional.of(new Requirement.Yield(v[share], v[confidence]))
            : v -> Optional.empty();
    }
}
