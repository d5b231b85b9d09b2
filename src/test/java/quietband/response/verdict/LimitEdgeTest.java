package quietband.response.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;

/** Limits that begin or end within the band. */
class LimitEdgeTest {

    // A limit from phase noise is there only where something vibrates: the edge of the covered band is the profile's end, which no
    // continuous curve has; edges are known to 1e-13 of their frequency
    @ParameterizedTest
    @CsvSource({"38.7, 1500, 1000", "21.3, 700.7, 700.7"})
    void a_limit_from_phase_noise_starts_with_the_profile(double from, double to, double bandTo) {
        var design = ModelFile.parse(Path.of("m.yaml"), ("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\n"
            + "vibration: {random: {points: [{frequency: %s Hz, density: 0.01 g^2/Hz}, {frequency: %s Hz, density: 0.01 g^2/Hz}]}}\n"
            + "requirement: {band: {from: 8 Hz, to: 1 kHz}, phase_noise: [{offset: 10 Hz, limit: -140 dBc/Hz}], residual: "
            + "from_phase_noise}\n").formatted(from, to)).design();
        StackVerdict verdict = Assessor.assess(design).verdict(Stack.BARE);
        assertThat(verdict.gaps()).hasSize(1);
        assertThat(verdict.gaps().get(0)[0]).isCloseTo(from, within(1e-12 * from));
        assertThat(verdict.gaps().get(0)[1]).isCloseTo(bandTo, within(1e-12 * bandTo));
        // y allowed = f sqrt(2 10^(-14) / 0.01) / f0: least at the profile's first point
        assertThat(verdict.worst().frequencyHz()).isCloseTo(from, within(1e-9 * from));
        assertThat(verdict.worst().limitPerG()).isCloseTo(from * Math.sqrt(2e-12) / 1e7, within(1e-9 * 1e-9));
    }
}
