package quietband.model.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Vec;
import quietband.model.format.ModelSchemaTest;
import quietband.model.quantity.BadPathException;
import quietband.model.quantity.Quantities;
import quietband.model.text.ModelException;
import quietband.units.Dimension;

class ModelEditTest {

    private final ModelFile full = ModelFile.read(ModelFileTest.FULL);

    /** Asserts that exactly one piece of the text was replaced by another. */
    private void differs(ModelFile edited, String before, String after) {
        assertThat(full.text()).containsOnlyOnce(before);
        assertThat(edited.text()).isEqualTo(full.text().replace(before, after));
    }

    @Test
    void aScalarIsReplacedAndItsCommentStays() {
        differs(full.withValue("oscillator.output", "2 GHz"), "output: 1 GHz        ", "output: 2 GHz        ");
        differs(full.withNumber("platform.mass", 0.1 + 0.2), "mass: 210 g", "mass: 300.00000000000004 g");
        differs(full.withNumber("cancellation.error.delay", 3e-6), "delay: 2 us", "delay: 3 us");
    }

    @Test
    void aPathMayLeadThroughANameThatWasJustGiven() {
        ModelFile main = ModelFile.read(Path.of("models/ridge-relay.yaml"));
        ModelEditor editor = new ModelEditor("m.yaml", main.text());
        // a number that waits, a name, and a number behind that name
        editor.set("platform.mass", 0.2, Dimension.MASS);
        editor.set("platform.springs.corners.name", "feet");
        editor.set("platform.springs.feet.mass", 0.0007, Dimension.MASS);
        assertThat(editor.text()).contains("name: feet", "mass: 200 g", "mass: 0.7 g");
    }

    @Test
    void oneAxisOfOneValueForThreeMakesAMap() {
        differs(full.withNumber("cancellation.error.delay.y", 3e-6), "delay: 2 us",
            "delay: {x: 2 us, y: 3 us, z: 2 us}");
        differs(full.withNumber("cancellation.error.gain.y", 0.02), "gain: {x: 1 %, y: 1 %, z: -1 %}",
            "gain: {x: 1 %, y: 2 %, z: -1 %}");
        differs(full.withNumber("oscillator.resonator.position.x", 0.001), "position: {z: 3 mm}",
            "position: {z: 3 mm, x: 1 mm}");
        differs(full.withNumber("oscillator.resonator.support_resonance.frequency.x", 6000),
            "support_resonance: {frequency: 6.2 kHz, q: 40} ", "support_resonance: {x: {frequency: 6 kHz, q: 40}, "
                + "y: {frequency: 6.2 kHz, q: 40}, z: {frequency: 6.2 kHz, q: 40}} ");
    }

    @Test
    void missingKeysAndBlocksAreAddedWhereTheyBelong() {
        ModelFile small = ModelFile.read(ModelFileTest.GOOD.resolve("smallest.yaml"));
        assertThat(small.withValue("oscillator.resonator.position.z", "3 mm").text()).isEqualTo("""
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g, position: {z: 3 mm}}}
            """);
        assertThat(small.withValues(Map.of("cancellation", "{sensor: {range: 20 g}}"))
            .withNumber("cancellation.error.delay", 1e-6).withValue("title", "\"a: b\"").text()).isEqualTo("""
            quietband: 1
            title: "a: b"
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}
            cancellation: {sensor: {range: 20 g}, error: {delay: 1 us}}
            """);
        differs(full.withValue("cancellation.weights", "1 ppb/g"),
            "calibrated: each                            # or design\n",
            "calibrated: each                            # or design\n  weights: 1 ppb/g\n");
    }

    @Test
    void aListIsReplacedByFlowOrBlockText() {
        differs(full.withValue("requirement.tones", "\n- {frequency: 1 kHz, limit: -50 dBc}"),
            "tones: [{frequency: 10 Hz, limit: -40 dBc}, {frequency: 2 kHz, limit: -90 dBc}]",
            "tones:\n    - {frequency: 1 kHz, limit: -50 dBc}");
        ModelFile taps = full.without("cancellation.path.filter").withValue("cancellation.path.taps", "{x: [1, 0.5]}");
        assertThat(taps.design().cancellation().orElseThrow().path().filters().get(0).taps()).containsExactly(1, 0.5);
        assertThat(taps.text()).contains("low_pass: {frequency: 20 kHz, order: 1}\n    taps: {x: [1, 0.5]}\n");
    }

    @Test
    void aKeyIsRemovedWithItsLineOrItsComma() {
        differs(full.without("platform.modal_damping"), "  modal_damping: 0\n", "");
        differs(full.without("cancellation.error.phase"), "phase: 0.5 deg, ", "");
        differs(full.without("cancellation.error.delay"), ", delay: 2 us", "");
        assertThat(full.without("cancellation.weights").text()).isEqualTo(full.text());
    }

    @Test
    void onePlaceOfAGroupSplitsItAndToleranceStillMeansAll() {
        ModelFile split = full.withNumber("platform.springs.corners[2].stiffness.x", 8000);
        List<Platform.Spring> springs = split.design().platform().orElseThrow().springs();
        assertThat(springs).extracting(Platform.Spring::group)
            .containsExactly("corners-1", "corners-2", "corners-3", "corners-4");
        List<Platform.Spring> before = full.design().platform().orElseThrow().springs();
        for (int i = 0; i < 4; i++) {
            assertThat(springs.get(i).at()).isEqualTo(before.get(i).at());
            assertThat(springs.get(i).stiffness()).isEqualTo(i == 1 ? new Vec(8000, 9000, 11000) : new Vec(9000, 9000,
                11000));
            assertThat(springs.get(i).preload()).isEqualTo(6);
        }
        Quantities q = split.design().quantities();
        assertThat(q.find("platform.springs.corners.stiffness").size()).isEqualTo(12);
        assertThat(q.valueOf("platform.springs.corners[2].stiffness.x")).isEqualTo(8000);
        assertThat(split.text()).contains("- name: corners-1                           # letters", "# or compression_only, with preload");
        ModelFile again = split.withNumber("platform.springs.corners[3].damping.z", 3);
        assertThat(again.design().platform().orElseThrow().springs().get(2).damping()).isEqualTo(new Vec(1.8, 1.8, 3));
    }

    @Test
    void whatFollowedSoFarIsWrittenWhole() {
        ModelFile weights = full.withNumber("cancellation.weights.x", 1e-9);
        Vec followed = full.design().weightsPerG();
        assertThat(weights.design().weightsPerG()).isEqualTo(followed.with(Axis.X, 1e-9));
        ModelFile inertia = full.withNumber("platform.inertia.zz", 1.4e-4);
        assertThat(inertia.design().platform().orElseThrow().inertia().zz()).isEqualTo(1.4e-4);
        assertThat(inertia.design().platform().orElseThrow().inertia().xx())
            .isEqualTo(full.design().platform().orElseThrow().inertia().xx());
    }

    @Test
    void aPathThatLeadsNowhereIsExplained() {
        assertThatThrownBy(() -> full.withValue("platform.mas", "1 g")).isInstanceOf(BadPathException.class)
            .hasMessage("platform.mas: there is no key 'mas'; did you mean 'mass'?");
        assertThatThrownBy(() -> full.withValue("platform.springs.corner.mass", "1 g")).isInstanceOf(BadPathException.class)
            .hasMessageContaining("there is no entry 'corner'; did you mean 'corners'?");
        assertThatThrownBy(() -> full.withValue("platform.mass.x", "1 g")).isInstanceOf(BadPathException.class)
            .hasMessageContaining("below a single value");
        assertThatThrownBy(() -> full.withValue("platform.mass", "1 N")).isInstanceOf(ModelException.class)
            .hasMessageContaining("platform.mass: '1 N' is a force");
    }

    @Test
    void lineEndsStayAsTheyAre() {
        String text = full.text().replace("\n", "\r\n");
        ModelFile crlf = ModelFile.parse(full.path(), text).withValue("cancellation.weights", "1 ppb/g");
        assertThat(crlf.text().replace("\r\n", "")).doesNotContain("\n");
        assertThat(crlf.text()).contains("\r\n  weights: 1 ppb/g\r\n");
    }

    static List<Path> models() throws IOException {
        return ModelSchemaTest.goodFiles().toList();
    }

    /** Every number alone, then many at once: the text read again gives exactly the design that was meant. */
    @ParameterizedTest
    @MethodSource("models")
    void everyNumberWrittenReadsBackExactly(Path path) {
        ModelFile file = ModelFile.read(path);
        Quantities own = file.design().quantities();
        Random random = new Random(11);
        for (int slot : IntStream.range(0, own.size()).filter(i -> usable(own, i)).toArray()) {
            if (random.nextInt(12) == 0 || own.size() < 60) {
                double[] v = own.values();
                v[slot] = v[slot] * 1.0001234567891 + (v[slot] == 0 ? 1e-7 / 3 : 0);
                readsBack(file, own.with(v));
            }
        }
        for (int round = 0; round < 8; round++) {
            double[] v = own.values();
            for (int i = 0; i < v.length; i++) {
                boolean change = usable(own, i) && random.nextInt(10) == 0;
                v[i] = change ? v[i] * (1 + random.nextDouble() * 1e-3) : v[i];
            }
            readsBack(file, own.with(v));
        }
    }

    private static boolean usable(Quantities own, int slot) {
        return !own.slot(slot).absent() && !own.slot(slot).path().matches(".*(order|bits|sample_rate|share|confidence).*")
            && !own.slot(slot).path().matches(".*(coefficient).*");
    }

    private static void readsBack(ModelFile file, Quantities meant) {
        Design written = file.withQuantities(meant).design();
        Quantities own = file.design().quantities();
        for (int i = 0; i < meant.size(); i++) {
            String path = own.slot(i).path();
            if (!own.slot(i).absent() && !path.matches("oscillator.output|platform.inertia.*|cancellation.weights.*")) {
                assertThat(written.quantities().valueOf(path)).as(path).isEqualTo(meant.value(i));
            }
        }
        // what may follow other numbers comes out the same but for rounding: a ratio is taken and multiplied back
        Design design = file.design().with(meant);
        assertThat(written.oscillator().outputHz()).isCloseTo(design.oscillator().outputHz(), withinPercentage(1e-12));
        for (int axis = 0; axis < 3; axis++) {
            assertThat(written.weightsPerG().get(axis)).isCloseTo(design.weightsPerG().get(axis), within(1e-24));
        }
        design.platform().ifPresent(p -> {
            assertThat(written.platform().orElseThrow().inertia().xx()).isCloseTo(p.inertia().xx(),
                withinPercentage(1e-12));
            assertThat(written.platform().orElseThrow().inertia().yz()).isCloseTo(p.inertia().yz(), within(1e-24));
        });
    }
}
