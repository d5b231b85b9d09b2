package quietband.model.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Oscillator;
import quietband.model.Platform;
import quietband.model.Requirement;
import quietband.model.Resonance;
import quietband.model.Rotation;
import quietband.model.Tolerance;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.model.quantity.NumberChange;
import quietband.model.text.FileProblem;

public class ModelFileTest {

    public static final Path GOOD = Path.of("src/test/resources/quietband/model/good");
    public static final Path FULL = GOOD.resolve("ridge-relay.yaml");

    private final ModelFile file = ModelFile.read(FULL);
    private final Design design = file.design();

    @Test
    void theFullExampleReadsWithOneWarning() {
        assertThat(file.warnings()).extracting(FileProblem::path).containsExactly("platform.springs.corners.preload");
        assertThat(design.title()).isEqualTo("Ridge relay trial A");
        assertThat(file.files()).containsOnlyKeys("ridge-relay-filter.csv", "profiles/rotor-cabin.csv",
            "lots/ridge-lot.csv");
        assertThat(file.hash()).hasSize(64).isEqualTo(ModelFile.read(FULL).hash());
    }

    @Test
    void theOscillatorIsInSiUnits() {
        Oscillator o = design.oscillator();
        assertThat(o.carrierHz()).isEqualTo(1e7);
        assertThat(o.outputHz()).isEqualTo(1e9);
        assertThat(o.staticPhaseNoise().orElseThrow().at(10)).isEqualTo(-138);
        assertThat(o.resonator().sensitivityPerG()).isEqualTo(new Vec(0.35e-9, -0.22e-9, 0.48e-9));
        assertThat(o.resonator().position()).isEqualTo(new Vec(0, 0, 0.003));
        assertThat(o.resonator().supportResonance()).isEqualTo(new Resonance(Vec.all(6200), Vec.all(40)));
        assertThat(o.resonator().orientation()).isEqualTo(new Rotation(new Vec(0, 0, 1), Math.PI / 2));
    }

    @Test
    void thePlatformHasOneSpringPerPlace() {
        Platform p = design.platform().orElseThrow();
        assertThat(p.mass()).isEqualTo(0.21);
        assertThat(p.size()).contains(new Vec(0.062, 0.062, 0.024));
        // J_zz of a block: m (a^2 + b^2)/12
        assertThat(p.inertia().zz()).isCloseTo(0.21 * 2 * 0.062 * 0.062 / 12, within(1e-18));
        assertThat(p.springs()).hasSize(4);
        Platform.Spring second = p.springs().get(1);
        assertThat(second.label()).isEqualTo("corners[2]");
        assertThat(second.at()).isEqualTo(new Vec(-0.024, 0.024, -0.003));
        assertThat(second.stiffness()).isEqualTo(new Vec(9000, 9000, 11000));
        assertThat(second.damping()).isEqualTo(new Vec(1.8, 1.8, 2));
        assertThat(second.lossFactor()).isEqualTo(Vec.all(0.05));
        assertThat(second.relaxationRatio()).isEqualTo(Vec.ZERO);
        assertThat(second.relaxationCornerHz()).isEqualTo(Vec.all(140));
        assertThat(second.mass()).isEqualTo(0.0006);
        assertThat(second.compressionOnly()).isFalse();
        assertThat(second.preload()).isEqualTo(6);
        assertThat(p.clearance()).contains(new Vec(0.002, 0.002, 0.0025));
        assertThat(p.stops()).contains(new Platform.Stops(Vec.all(400_000), Vec.all(0.2)));
        assertThat(p.massLimit()).isEqualTo(0.26);
        assertThat(p.boxLimit()).isEqualTo(new Vec(0.08, 0.08, 0.04));
    }

    @Test
    void theCorrectionIsReadWhole() {
        Cancellation c = design.cancellation().orElseThrow();
        assertThat(c.calibratedEach()).isTrue();
        assertThat(c.weightsPerG()).isEmpty();
        assertThat(c.sensor()).isEqualTo(new Cancellation.Sensor(true, new Vec(0.008, 0, 0.005), Vec.all(6000),
            new Resonance(Vec.all(22_000), Vec.all(3)), Vec.all(25e-6), Vec.all(20),
            List.of(1.0, 0.005, 0.005, 0.005, 1.0, 0.005, 0.005, 0.005, 1.0)));
        assertThat(c.path().sampleRateHz()).isEqualTo(1e5);
        assertThat(c.path().latency()).isEqualTo(8e-6);
        assertThat(c.path().highPass()).contains(new Cancellation.Pass(0.5, 1));
        assertThat(c.path().lowPass()).contains(new Cancellation.Pass(20_000, 1));
        assertThat(c.path().converterBits()).isEqualTo(16);
        assertThat(c.path().filters().get(1).tapIndex()).containsExactly(0, 2);
        assertThat(c.path().filters().get(1).taps()).containsExactly(1.2, -0.1);
        assertThat(c.path().filters().get(2).sections()[0]).containsExactly(1, 0.1, 0, 0.1, 0);
        assertThat(c.tuning()).isEqualTo(new Cancellation.Tuning(0.5e-6, 40_000, 4, 20e-9, 0.02));
        assertThat(c.error()).isEqualTo(new Cancellation.PathError(new Vec(0.01, 0.01, -0.01),
            Vec.all(Math.toRadians(0.5)), Vec.all(2e-6)));
    }

    @Test
    void vibrationAndRequirementAreReadWhole() {
        Vibration v = design.vibration();
        assertThat(v.together()).isFalse();
        assertThat(v.axes()).containsExactlyInAnyOrder(Axis.X, Axis.Y, Axis.Z);
        assertThat(v.gravity()).contains(new Vec(0, 0, -1));
        assertThat(v.drive(Axis.Y).orElseThrow().at(20)).isEqualTo(0.004);
        assertThat(v.tones()).containsExactly(new Vibration.Tone("1", 17, 0.6, Optional.of(Axis.Z)));
        assertThat(v.shock()).contains(new Vibration.Shock(Vibration.ShockShape.HALF_SINE, 20, 0.011));
        assertThat(v.sustainedG()).isEqualTo(2);
        Requirement r = design.requirement();
        assertThat(r.fromHz()).isEqualTo(10);
        assertThat(r.toHz()).isEqualTo(2000);
        assertThat(r.byVector()).isFalse();
        assertThat(r.residual().orElseThrow().at(100)).isCloseTo(0.05e-9, within(1e-24));
        assertThat(r.phaseNoise().orElseThrow().at(10)).isEqualTo(-70);
        assertThat(r.tones().orElseThrow().at(2000)).isEqualTo(-90);
        assertThat(r.jitter()).contains(new Requirement.Jitter(0.04, 10, 2000));
        assertThat(r.yield()).contains(new Requirement.Yield(0.95, 0.9));
    }

    @Test
    void scatterIsReadInTheUnitOfWhatItNames() {
        assertThat(design.tolerances()).extracting(Tolerance::name)
            .containsExactly("rate batch", "rate each", "loop gain", "loop delay", "crystal");
        assertThat(design.tolerances().get(1)).isEqualTo(new Tolerance("rate each",
            "platform.springs.corners.stiffness", Tolerance.Kind.SCALE, 0.01, Tolerance.Distribution.TRUNCATED,
            Tolerance.Draw.COMPONENT, 0.03, Optional.empty()));
        assertThat(design.tolerances().get(3).value()).isEqualTo(1e-6);
        assertThat(design.tolerances().get(4).lot().orElseThrow().rows().get(0)).isEqualTo(new Vec(0.35e-9, -0.22e-9,
            0.48e-9));
        assertThat(design.correlations()).containsExactly(
            new Tolerance.Correlation(List.of("loop gain", "loop delay"), 0.7));
        assertThat(design.conditions().get(0).changes()).containsExactly(
            new NumberChange("platform.springs.corners.stiffness", NumberChange.Act.SCALE, 0.3));
    }
}
