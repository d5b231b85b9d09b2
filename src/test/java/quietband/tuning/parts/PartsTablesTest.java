package quietband.tuning.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Vec;
import quietband.model.text.ModelException;

/** Tables that parts are chosen from: compounds, preferred numbers, catalogues, and a coil spring found for a need. */
class PartsTablesTest {

    @TempDir
    Path directory;

    @Test
    void every_compound_is_stiffer_in_the_cold_and_as_written_at_20_degrees() {
        List<Elastomer> all = Elastomer.table();
        assertThat(all).hasSizeGreaterThan(3);
        for (Elastomer e : all) {
            assertThat(e.celsius()).isSorted().contains(20);
            for (int i = 0; i < e.celsius().length; i++) {
                if (e.celsius()[i] == 20) {
                    assertThat(e.stiffness()[i]).as(e.name()).isEqualTo(1);
                    assertThat(e.roomLoss()).isEqualTo(e.loss()[i]);
                }
                if (i > 0) {
                    assertThat(e.stiffness()[i]).as(e.name()).isLessThan(e.stiffness()[i - 1]);
                }
            }
            // whoever asks for its own loss factor gets it back
            assertThat(Elastomer.nearest(e.roomLoss()).roomLoss()).isEqualTo(e.roomLoss());
        }
        // nearest in ratio: between 0.05 and 0.08 the geometric mean, 0.0632, decides
        assertThat(Elastomer.nearest(0.062).roomLoss()).isEqualTo(0.05);
        assertThat(Elastomer.nearest(0.064).roomLoss()).isEqualTo(0.08);
        assertThatThrownBy(() -> new Elastomer("odd", new double[] {0}, new double[] {1}, new double[] {1}).roomLoss())
            .hasMessageContaining("odd has no row at 20 degrees");
    }

    // R80: 10^(n/80); half a step is 1.45 % of the rate, 0.72 % of a natural frequency
    @ParameterizedTest
    @CsvSource({"1000, 1000", "10290, 10292.0", "12345, 12232.0", "0.0316, 0.0316228"})
    void a_preferred_number_is_one_of_80_in_a_decade(double rate, double expected) {
        double preferred = Elastomer.preferred(rate);
        double steps = 80 * Math.log10(preferred);
        assertThat(steps).isCloseTo(Math.rint(steps), within(1e-9));
        assertThat(Math.abs(Math.sqrt(preferred / rate) - 1)).isLessThanOrEqualTo(0.00723);
        assertThat(preferred).isCloseTo(expected, within(0.01 * expected));
    }

    private static final String HEAD = "part,rate_n_per_mm,lateral_rate_n_per_mm,free_length_mm,solid_length_mm,outer_diameter_mm,mass_g,"
        + "largest_load_n";

    @Test
    void a_catalogue_is_read_in_si_units() throws IOException {
        Path file = Files.writeString(directory.resolve("c.csv"), HEAD + ",loss_factor\nA,1.4,0.7,9,4,4.5,0.15,6.3,0.02\n");
        SpringCatalogue.Entry e = SpringCatalogue.read(file).entries().get(0);
        assertThat(e.rate()).isCloseTo(1400, within(1e-9));
        assertThat(e.lateral()).isCloseTo(700, within(1e-9));
        assertThat(e.freeLength()).isCloseTo(9e-3, within(1e-15));
        assertThat(e.solidLength()).isCloseTo(4e-3, within(1e-15));
        assertThat(e.outer()).isCloseTo(4.5e-3, within(1e-15));
        assertThat(e.mass()).isCloseTo(0.15e-3, within(1e-15));
        assertThat(e.largestLoad()).isEqualTo(6.3);
        assertThat(e.loss()).isEqualTo(0.02);
        Files.writeString(file, HEAD + "\nA,1.4,0.7,9,4,4.5,0.15,6.3\n");
        assertThat(SpringCatalogue.read(file).entries().get(0).loss()).isEqualTo(0.005);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "A,0,0.7,9,4,4.5,0.15,6.3 | c.csv:2: rate_n_per_mm: '0' is not above 0; write what the maker states",
        "A,1.4,0.7,9,9,4.5,0.15,6.3 | c.csv:2: solid_length_mm: is not below free_length_mm; swap or correct them",
        "A,1.4,0.7,9,4,wide,0.15,6.3 | c.csv:2: outer_diameter_mm: 'wide' does not start with a number",
        "'' | c.csv:1: no spring below the header; one row for each"})
    void a_wrong_row_of_a_catalogue_is_told(String row, String said) throws IOException {
        Path file = Files.writeString(directory.resolve("c.csv"), HEAD + "\n" + row + "\n");
        assertThatThrownBy(() -> SpringCatalogue.read(file)).isInstanceOf(ModelException.class)
            .satisfies(e -> assertThat(e.getMessage().replace(directory + "/", "")).contains(said));
    }

    // the found spring, from its own wire: k = G d^4/(8 n D^3), surge as the elastic line of its own mass, solid length (n + 2) d
    @ParameterizedTest
    @CsvSource({"2000, 1600", "12000, 9000"})
    void a_found_coil_has_the_rate_that_was_asked_for_and_room_for_its_stroke(double axial, double lateral) {
        CoilFinder.Need need = new CoilFinder.Need(axial, lateral, 1.5e-3, 1e-3, 500);
        WireMaterial material = WireMaterial.table().get(0);
        CoilFinder.Found found = CoilFinder.find(need, material).orElseThrow();
        CoilSpring coil = found.coil();
        double rate = material.shear() * Math.pow(coil.wire(), 4) / (8 * coil.active() * Math.pow(coil.diameter(), 3));
        assertThat(coil.rate()).isCloseTo(rate, within(1e-9 * rate));
        assertThat(coil.solidLength()).isCloseTo((coil.active() + 2) * coil.wire(), within(1e-12));
        assertThat(coil.freeLength() - coil.solidLength()).isGreaterThan(2.5e-3);
        assertThat(coil.diameter() / coil.wire()).isBetween(4.0, 16.0);
        assertThat(4 * coil.active()).isCloseTo(Math.rint(4 * coil.active()), within(1e-12));
        double along = Math.abs(Math.sqrt(rate / axial) - 1);
        assertThat(found.off()).isGreaterThanOrEqualTo(along - 1e-12).isLessThan(0.05);
        List<TargetCheck> checks = CoilChecks.of("legs", found, need);
        assertThat(checks).extracting(TargetCheck::name).containsExactly("stress", "solid_length", "buckling", "surge");
        assertThat(checks.get(1).met()).isTrue();
        assertThat(checks.get(1).words()).contains(String.format(java.util.Locale.ROOT, "legs: %.2f mm left",
            1e3 * (coil.freeLength() - found.most(1.5e-3) - coil.solidLength())));
        assertThat(checks.get(3).met()).isEqualTo(coil.surgeHz() > 500);
        assertThat(TargetCheck.of("x", true, "found", "takes").takes()).isEmpty();
        assertThat(TargetCheck.of("x", false, "found", "takes").takes()).isEqualTo("takes");
        assertThat(Vec.all(found.most(1e-3)).x()).isCloseTo(found.rest() + 1e-3, within(1e-15));
    }
}
