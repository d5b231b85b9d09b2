package quietband.model.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.edit.ModelFile;
import quietband.model.text.FileProblem;
import quietband.model.text.ModelException;

/**
 * What each reader of a model file says of a slip that the files of bad models do not have: where (line, column, path), what was found,
 * what to do. Each case is one wrong line in a good model, and must make this one problem and no other.
 */
class ReaderMessagesTest {

    private static final String GOOD = """
        quietband: 1
        oscillator:
          carrier: 10 MHz
          resonator: {sensitivity: 1 ppb/g}
        platform:
          mass: 200 g
          size: {x: 60 mm, y: 60 mm, z: 20 mm}
          springs:
            - {name: pads, at: [{x: 20 mm, y: 20 mm}, {x: -20 mm, y: 20 mm}, {y: -20 mm}], stiffness: 20 N/mm}
        cancellation:
          sensor: {place: platform}
        """;

    private static ModelException refused(String text) {
        ModelException e = catchThrowableOfType(ModelException.class, () -> ModelFile.parse(Path.of("m.yaml"), text));
        assertThat(e).as(text).isNotNull();
        return e;
    }

    // a line of the model, what stands there instead, and what must be said of it
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "carrier: 10 MHz | carrier: [10 MHz] | 3:12: oscillator.carrier: a list stands where one value is due; expected a frequency",
        "carrier: 10 MHz | carrier: -10 MHz | 3:12: oscillator.carrier: '-10 MHz' is out of range; must be above 0",
        "carrier: 10 MHz | carrier: 10 MHz\\n  ? [a]\\n  : 1 | 4:5: oscillator: a list stands where a key is due; write a word",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, cut: ~} | 4:42: oscillator.resonator.cut: has no value; write a text or leave",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, cut: [SC]} | oscillator.resonator.cut: a list stands where a text is due",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, orientation: {axis: w, angle: 1 deg}} | orientation.axis: 'w' is no direction; "
            + "write x, y, z or a direction {x: 1, y: 1, z: 0}",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, orientation: {axis: {x: 0}, angle: 1 deg}} | orientation.axis: "
            + "a map is no direction",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, orientation: {axis: {x: 1, w: 2}, angle: 1 deg}} | 'w' is no "
            + "axis; write x, y and z once",
        "{sensitivity: 1 ppb/g} | {sensitivity: 1 ppb/g, support_resonance: {x: {frequency: 1 kHz, q: 3}, q: 4}} | support_resonance.q: "
            + "unknown key beside axes; write x, y and z with their keys, or the keys alone for all axes",
        "{sensitivity: 1 ppb/g} | 7 | 4:14: oscillator.resonator: '7' stands where a map is due; write its keys: ",
        "size: {x: 60 mm, y: 60 mm, z: 20 mm} | size: {x: 60 mm} | 7:9: platform.size: lacks y and z; write x, y and z, or one value",
        "at: [{x: 20 mm, y: 20 mm}, {x: -20 mm, y: 20 mm}, {y: -20 mm}] | at: [] | platform.springs.pads.at: has no place; write a list",
        "{y: -20 mm}] | {v: -20 mm}] | platform.springs.pads[3].at.v: unknown key; known here: x, y, z",
        "name: pads | name: 2 | 9:14: platform.springs.1.name: '2' is the number of another entry; use a letter in the name",
        "stiffness: 20 N/mm | stiffness: 20 N/mm, ends: glued | platform.springs.pads.ends: 'glued' is not known here; write",
        "place: platform | place: hausing | 11:19: cancellation.sensor.place: 'hausing' is not known here; did you mean 'housing'?",
        "place: platform | place: housing}\\n  path: {taps: {u: [1]}, sample_rate: 9 kHz | path.taps: 'u' is no axis; write x, y or z",
        "place: platform | place: housing}\\n  path: {taps: 1, sample_rate: 9 kHz | 12:16: cancellation.path.taps: '1' "
            + "stands where a list is due",
        "place: platform | place: housing}\\n  path: {taps: [[1]], sample_rate: 9 kHz | path.taps: a list is no number; "
            + "write a list of numbers",
        "place: platform | place: housing}\\n  path: {sections: {z: [[1, 0, 0, 1.2, 0.1]]}, sample_rate: 9 kHz | "
            + "path.sections: section 1 is unstable"})
    void one_slip_is_told_once_with_place_finding_and_advice(String line, String instead, String said) {
        assertThat(GOOD).contains(line);
        ModelException e = refused(GOOD.replace(line, instead.replace("\\n", "\n")));
        assertThat(e.problems()).hasSize(1);
        assertThat(e.problems().get(0).toString()).startsWith("m.yaml:").contains(said);
    }

    // a block behind the good model, and what must be said of it
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "vibration: {axes: x} | 12:19: vibration.axes: 'x' stands where a list is due; write the axes in a list, e.g. [x, y, z]",
        "vibration: {axes: []} | vibration.axes: names no axis",
        "vibration: {axes: [x, x]} | 12:23: vibration.axes: axis x is named twice; name it once",
        "vibration: {axes: [x, u]} | 12:23: vibration.axes: 'u' is no axis; write x, y or z",
        "vibration: {gravity: down} | vibration.gravity: 'down' is no direction; write x, y, z, with a sign if need be, or",
        "vibration: {gravity: {x: 1e200}} | vibration.gravity.x: '1e200' is out of range",
        "vibration: {random: {x: {scale: 3 dB}}} | vibration.random.x: has no profile; write file: profile.csv or points:",
        "vibration: {random: {file: none.csv}} | vibration.random.file: 'none.csv': there is no such file; check the "
            + "name and the directory "
            + "(files are found relative to the model file)",
        "vibration: {tones: [{name: a, frequency: 1 Hz, peak: 1 g}, {name: a, frequency: 2 Hz, peak: 1 g}]} | "
            + "vibration.tones.2.name: 'a' is "
            + "taken; the entry at line 12 has it; choose another name",
        "requirement: {jitter: {limit: 1 mrad, from: 3 kHz}} | requirement.jitter: 'to' is not above 'from'; write the "
            + "lower frequency as from",
        "requirement: {residual: from_noise} | requirement.residual: 'from_noise' is not known here; write from_phase_noise",
        "requirement: {phase_noise: [{offset: 10 Hz, limit: -70 dBc/Hz}], residual: from_phase_noise} | from_phase_noise needs "
            + "vibration.random on a driven axis; add it or write limit points",
        "tolerances: [{of: platform.mass}] | tolerances.1: has no value; write exactly one of scale, add and lot",
        "tolerances: [{of: platform, scale: 1 %}] | tolerances.1.of: 'platform' is a block; name a number in it: ",
        "tolerances: [{of: platform.clearance, scale: 1 %}] | 'platform.clearance' has no value in this model; write one "
            + "in the model file",
        "tolerances: [{of: platform.mass, lot: units.csv}] | tolerances.1.lot: a lot holds sensitivities along x, y and z; name osc",
        "tolerances: [{of: platform.mass, scale: 1 %, distribution: truncated}] | a truncated distribution lacks "
            + "truncate_at; add it, e.g. ",
        "tolerances: [{of: requirement.band.from, scale: -1 %}] | tolerances.1.scale: '-1 %' is out of range; must be at least 0",
        "conditions: [{name: hot, change: [{of: platform.mass}]}] | changes nothing; write exactly one of set, scale and add",
        "conditions: [{name: hot, change: [{of: platform.mass, set: 1 kg, add: 1 g}]}] | has set and add; write exactly "
            + "one of set, scale",
        "conditions: [{name: hot, change: [{of: platform.mass, add: -1 kg}]}] | conditions.hot: under it platform.mass "
            + "must be above 0; make",
        "correlations: [{between: [a], coefficient: 0.5}] | correlations.1.between: fewer than two names; write the "
            + "names of two tolerances",
        "correlations: [{between: [a, a], coefficient: 0.5}] | correlations.1.between: a name stands there twice; name "
            + "each tolerance once"})
    void a_wrong_block_is_told_once_with_place_finding_and_advice(String block, String said) {
        ModelException e = refused(GOOD + block + "\n");
        assertThat(e.problems()).hasSize(1);
        assertThat(e.problems().get(0).line()).isEqualTo(12);
        assertThat(e.problems().get(0).toString()).contains(said);
    }

    @Test
    void two_coefficients_for_one_pair_contradict_each_other() {
        String tolerances = "tolerances: [{name: a, of: platform.mass, scale: 1 %}, {name: b, of: oscillator.carrier, scale: 1 %}]\n";
        ModelException e = refused(GOOD + tolerances + "correlations: [{between: [a, b], coefficient: 0.5}, {between: [b, a], "
            + "coefficient: 0.4}]\n");
        assertThat(e.problems()).extracting(FileProblem::toString)
            .containsExactly("m.yaml:13:53: correlations.2: 'a' and 'b' have another coefficient before; keep one");
    }

    @Test
    void what_does_nothing_is_warned_of_and_read() {
        String odd = GOOD.replace("stiffness: 20 N/mm", "stiffness: 20 N/mm, preload: 3 N, relaxation: {corner: 100 Hz}")
            .replace("  size:", "  stops: {stiffness: 100 N/mm}\n  limits: {mass: 150 g}\n  size:")
            + "  tuning: {noise: 3 nV/rtHz}\nrequirement: {tones: [{frequency: 10 Hz, limit: -50 dBc}]}\n";
        ModelFile file = ModelFile.parse(Path.of("m.yaml"), odd);
        assertThat(file.warnings()).extracting(FileProblem::toString).satisfiesExactlyInAnyOrder(
            w -> assertThat(w).contains("platform.stops: do nothing without clearance; add platform.clearance"),
            w -> assertThat(w).contains("platform.limits.mass: the mass is above its limit"),
            w -> assertThat(w).contains("preload: does nothing without 'ends: compression_only'"),
            w -> assertThat(w).contains("relaxation: does nothing without both stiffness_ratio and corner"),
            w -> assertThat(w).contains("cancellation.tuning: without a slope noise, range and curvature do nothing"),
            w -> assertThat(w).contains("requirement.tones: asks nothing without vibration.tones"));
        assertThat(file.design().platform().orElseThrow().springs()).hasSize(3);
    }
}
