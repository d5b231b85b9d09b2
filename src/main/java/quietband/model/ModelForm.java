package quietband.model;

/**
 * The whole format of a model file as one tree: keys, units, ranges, defaults and a line of explanation each.
 * Reading, checking, the JSON Schema and editors all follow it.
 */
final class ModelForm {

    /** The root of a model file. */
    static final Form.Block ROOT = Form.Block.of(
        Key.word("quietband", "version of the format", "1").must(),
        Key.text("title", Form.Kind.FREE, "free text"),
        Key.of("oscillator", OscillatorForm.block(), "where it runs, where it is judged, its resonator").must(),
        Key.of("platform", PlatformForm.block(), "the sprung platform; left out: bolted down"),
        Key.of("cancellation", CancellationForm.block(), "the feed-forward correction; left out: none"),
        Key.of("vibration", VibrationForm.block(), "the environment"),
        Key.of("requirement", RequirementForm.block(), "what is asked"),
        Key.of("tolerances", ScatterForm.tolerances(), "scatter between units"),
        Key.of("correlations", ScatterForm.correlations(), "between tolerances"),
        Key.of("conditions", ScatterForm.conditions(), "named corners"));

    private ModelForm() { }
}
