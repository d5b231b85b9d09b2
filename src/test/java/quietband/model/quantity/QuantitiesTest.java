package quietband.model.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Design;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.model.edit.ModelFileTest;
import quietband.units.Dimension;

class QuantitiesTest {

    private final Design design = ModelFile.read(ModelFileTest.FULL).design();
    private final Quantities quantities = design.quantities();

    private List<String> paths(String path) {
        return Arrays.stream(quantities.find(path).slots()).mapToObj(s -> quantities.slot(s).path()).toList();
    }

    @Test
    void aPathWithoutEntryPlaceAndAxisNamesAllByPlaceThenAxis() {
        List<String> expected = IntStream.rangeClosed(1, 4).boxed().flatMap(place -> List.of("x", "y", "z").stream()
            .map(axis -> "platform.springs.corners[" + place + "].stiffness." + axis)).toList();
        assertThat(paths("platform.springs.stiffness")).isEqualTo(expected);
        assertThat(paths("platform.springs.corners.stiffness")).isEqualTo(expected);
        assertThat(paths("platform.springs.1.stiffness")).isEqualTo(expected);
        assertThat(paths("platform.springs[1].stiffness")).isEqualTo(expected);
    }

    @Test
    void aPlaceAnAxisOrBothNarrowIt() {
        assertThat(paths("platform.springs.corners[2].stiffness")).containsExactly(
            "platform.springs.corners[2].stiffness.x", "platform.springs.corners[2].stiffness.y",
            "platform.springs.corners[2].stiffness.z");
        assertThat(paths("platform.springs.stiffness.z")).hasSize(4);
        assertThat(paths("platform.springs.corners[2].at.z")).containsExactly("platform.springs.corners[2].at.z");
        assertThat(paths("cancellation.sensor.cross_axis")).hasSize(6);
        assertThat(paths("oscillator.resonator.support_resonance.frequency.x")).hasSize(1);
        assertThat(paths("vibration.random.scale")).hasSize(3);
        assertThat(paths("oscillator.static_phase_noise.level")).hasSize(2);
        assertThat(paths("requirement.residual.2.limit")).containsExactly("requirement.residual.2.limit");
    }

    @Test
    void aSlotKnowsItsGroupPlaceAxisAndDimension() {
        NumberSlot slot = quantities.find("platform.springs.corners[3].damping.y").detail(0);
        assertThat(slot.path()).isEqualTo("platform.springs.corners[3].damping.y");
        assertThat(slot.quantity()).isEqualTo("platform.springs.damping");
        assertThat(slot.dimension()).isEqualTo(Dimension.DAMPING);
        assertThat(slot.group()).isEqualTo("corners");
        assertThat(slot.place()).isEqualTo(3);
        assertThat(slot.axis()).isEqualTo(1);
        assertThat(slot.absent()).isFalse();
        assertThat(quantities.find("platform.springs.damping").springs()).isEqualTo(4);
        assertThat(quantities.find("platform.mass").springs()).isZero();
    }

    @Test
    void quantitiesLeftAtTheirDefaultCanBeNamed() {
        Design plain = ModelFile.parse(ModelFileTest.FULL, """
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}
            cancellation: {sensor: {place: housing}}
            """).design();
        Design late = plain.with(plain.quantities().with("cancellation.error.delay", 1e-6));
        assertThat(late.cancellation().orElseThrow().error().delay()).isEqualTo(Vec.all(1e-6));
        Design turned = plain.with(plain.quantities().with("oscillator.resonator.orientation.angle", 0.1));
        assertThat(turned.oscillator().resonator().orientation()).isEqualTo(new Rotation(new Vec(0, 0, 1), 0.1));
        assertThat(plain.quantities().find("cancellation.tuning.slope").size()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "platform.springs.corners.stifness | names no number of this model; did you mean 'platform.springs.corners.stiffness'?",
        "platform.springs.corner.stiffness | did you mean 'platform.springs.corners.stiffness'?",
        "platform.springs.corners[5].stiffness | names no number of this model",
        "platform.limits | is a block; name a number in it: box, mass",
        "platform.springs.corners.turn.angle | it is called 'platform.springs.corners.orientation.angle' now",
        "oscillator | is a block; name a number in it: angle, carrier",
        "platform..mass | is no path",
        "oscillator.resonator.cut | names no number of this model"})
    void anUnknownPathIsExplained(String path, String message) {
        assertThatThrownBy(() -> quantities.find(path)).isInstanceOf(BadPathException.class).hasMessageContaining(message);
    }

    @Test
    void designsFromTheSameNumbersAreEqualAndOthersFollowEveryNumber() {
        Design same = design.with(quantities.with(quantities.values()));
        assertThat(same.platform()).isEqualTo(design.platform());
        assertThat(same.oscillator()).isEqualTo(design.oscillator());
        assertThat(same.vibration()).isEqualTo(design.vibration());
        assertThat(same.requirement()).isEqualTo(design.requirement());
        for (int slot = 0; slot < quantities.size(); slot++) {
            if (!quantities.slot(slot).absent() && !quantities.slot(slot).path().matches(".*(offset|frequency|bits).*")) {
                double[] v = quantities.values();
                v[slot] += 1.5 + Math.abs(v[slot]);
                Design other = design.with(quantities.with(v));
                boolean changed = !other.platform().equals(design.platform())
                    || !other.oscillator().equals(design.oscillator())
                    || !other.vibration().equals(design.vibration())
                    || !other.requirement().equals(design.requirement())
                    || !other.cancellation().equals(design.cancellation());
                boolean used = !quantities.slot(slot).path().startsWith("vibration.random.points");
                assertThat(changed).as(quantities.slot(slot).path()).isEqualTo(used);
            }
        }
    }

    @Test
    void whatHasNoValueAndNoDefaultCannotBeVaried() {
        Quantities small = ModelFile.read(ModelFileTest.GOOD.resolve("smallest.yaml")).design().quantities();
        assertThatThrownBy(() -> small.find("cancellation.sensor.bandwidth")).isInstanceOf(BadPathException.class)
            .hasMessage("cancellation.sensor.bandwidth: has no value in this model; write one in the model file first");
        assertThatThrownBy(() -> small.find("platform.mass")).isInstanceOf(BadPathException.class)
            .hasMessageContaining("has no value in this model");
        assertThatThrownBy(() -> small.find("platform.springs.stiffness")).isInstanceOf(BadPathException.class)
            .hasMessageContaining("the model has no platform");
    }

    @Test
    void whatFollowsAnotherNumberCanBeVariedAroundIt() {
        // weights follow the unit's own sensitivity and the drawn ratio acts on that
        Quantities drawn = quantities.changed(List.of(
            new NumberChange("cancellation.weights", NumberChange.Act.SCALE, 0.1),
            new NumberChange("oscillator.resonator.sensitivity", NumberChange.Act.SCALE, 1)));
        double own = design.oscillator().resonator().mountedSensitivityPerG().y();
        // 2 x 1.1; the factors are rounded three times
        assertThat(design.with(drawn).weightsPerG().y()).isCloseTo(2.2 * own, within(1e-14 * Math.abs(own)));
        double xx = design.platform().orElseThrow().inertia().xx();
        Design heavy = design.changed(List.of(new NumberChange("platform.inertia.xx", NumberChange.Act.SCALE, 0.1),
            new NumberChange("platform.mass", NumberChange.Act.SCALE, 1)));
        assertThat(heavy.platform().orElseThrow().inertia().xx()).isCloseTo(2.2 * xx, within(1e-14 * xx));
        Design plain = ModelFile.read(ModelFileTest.GOOD.resolve("smallest.yaml")).design();
        assertThat(plain.with(plain.quantities().with("oscillator.carrier", 5e6)).oscillator().outputHz())
            .isEqualTo(5e6);
        assertThat(plain.with(plain.quantities().with("oscillator.output", 1e9)).oscillator().outputHz())
            .isEqualTo(1e9);
    }

    @Test
    void inertiaFollowsMassAndSizeWhenNotWritten() {
        Design heavy = design.changed(List.of(new NumberChange("platform.mass", NumberChange.Act.SCALE, 1)));
        assertThat(heavy.platform().orElseThrow().inertia().xx())
            .isEqualTo(2 * design.platform().orElseThrow().inertia().xx());
    }

    @Test
    void aUnitOfADesignCalibrationKeepsTheDesignsWeights() {
        Design fixed = ModelFile.parse(ModelFileTest.FULL, ModelFile.read(ModelFileTest.FULL).text()
            .replace("calibrated: each", "calibrated: design")).design();
        Quantities drawn = fixed.quantities().with("oscillator.resonator.sensitivity", 1e-9);
        assertThat(fixed.unit(drawn).weightsPerG()).isEqualTo(fixed.weightsPerG());
        assertThat(fixed.with(drawn).weightsPerG().z()).isEqualTo(1e-9);
        assertThat(design.unit(design.quantities().with("oscillator.resonator.sensitivity", 1e-9)).weightsPerG().z())
            .isEqualTo(1e-9);
    }

    @Test
    void changesActInOrder() {
        String mass = "platform.mass";
        Quantities changed = quantities.changed(List.of(new NumberChange(mass, NumberChange.Act.SET, 0.1),
            new NumberChange(mass, NumberChange.Act.SCALE, 0.5), new NumberChange(mass, NumberChange.Act.ADD, 0.05)));
        // 0.1 * 1.5 + 0.05
        assertThat(changed.valueOf(mass)).isEqualTo(0.1 * 1.5 + 0.05);
        assertThat(quantities.with(mass, -1).outOfRange()).contains("platform.mass must be above 0");
    }
}
