package quietband.model.format;

/**
 * The whole format of a model file as one tree: keys, units, ranges, defaults and a line of explanation each.
 * Reading, checking, the JSON Schema and editors all follow it.
 */
public final class ModelForm {

    /** The root of a model file. */
    public static final FormatNode.Block ROOT = FormatNode.Block.of(
        FormatKey.word("quietband", "version of the format", "1").must(),
        FormatKey.text("title", FormatNode.Kind.FREE, "free text"),
        FormatKey.of("oscillator", OscillatorForm.block(), "where it runs, where it is judged, its resonator").must(),
        FormatKey.of("platform", PlatformForm.block(), "the sprung platform; left out: bolted down"),
        FormatKey.of("cancellation", CancellationForm.block(), "the feed-forward cancellation; left out: none"),
        FormatKey.of("vibration", VibrationForm.block(), "the environment"),
        FormatKey.of("requirement", RequirementForm.block(), "what is asked"),
        FormatKey.of("tolerances", ScatterForm.tolerances(), "scatter between units"),
        FormatKey.of("correlations", ScatterForm.correlations(), "between tolerances"),
        FormatKey.of("conditions", ScatterForm.conditions(), "changes of the design that it is judged under, too"));

    private ModelForm() { }
}
