package quietband.model.compile;

import java.util.Optional;
import quietband.model.Requirement;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.spectrum.LogCurve;

/** Compiles the block {@code requirement}. */
final class RequirementMaker {

    private RequirementMaker() { }

    static CompiledPart<Requirement> compile(WrittenValue block, double[] nominal) {
        int from = block.get("band").get("from").slot();
        int to = block.get("band").get("to").slot();
        boolean vector = block.get("by").text().equals("vector");
        WrittenValue limit = block.get("residual");
        boolean derived = limit.form() instanceof FormatNode.WordOr && limit.given();
        CompiledPart<Optional<LogCurve>> residual = CompiledPart.curve(limit, "frequency", "limit",
            (f, l) -> LogCurve.logLog(f, l, LogCurve.Outside.CONSTANT), nominal);
        CompiledPart<Optional<LogCurve>> noise =
            CompiledPart.curve(block.get("phase_noise"), "offset", "limit", LogCurve::decibel, nominal);
        CompiledPart<Optional<LogCurve>> tones =
            CompiledPart.curve(block.get("tones"), "frequency", "limit", LogCurve::decibel, nominal);
        CompiledPart<Optional<Requirement.Jitter>> jitter = jitter(block.get("jitter"), from, to);
        CompiledPart<Optional<Requirement.Yield>> good = share(block.get("yield"));
        return v -> new Requirement(v[from], v[to], vector, residual.from(v), derived, noise.from(v), tones.from(v),
            jitter.from(v), good.from(v));
    }

    private static CompiledPart<Optional<Requirement.Jitter>> jitter(WrittenValue block, int bandFrom, int bandTo) {
        int limit = block.get("limit").slot();
        int from = block.get("from").given() ? block.get("from").slot() : bandFrom;
        int to = block.get("to").given() ? block.get("to").slot() : bandTo;
        return block.given() ? v -> Optional.of(new Requirement.Jitter(v[limit], v[from], v[to]))
            : v -> Optional.empty();
    }

    private static CompiledPart<Optional<Requirement.Yield>> share(WrittenValue block) {
        int share = block.get("share").slot();
        int confidence = block.get("confidence").slot();
        return block.given() ? v -> Optional.of(new Requirement.Yield(v[share], v[confidence]))
            : v -> Optional.empty();
    }
}
