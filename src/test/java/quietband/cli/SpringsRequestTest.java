package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.motion.run.VibrationRun;
import quietband.platform.Assembly;
import quietband.platform.PlatformMotion;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessor;

/** What springs says, held against assess and simulate; wishes that cannot be met. */
class SpringsRequestTest {

    @TempDir
    private Path folder;

    private Run springs(String model, Object... more) {
        Object[] words = new Object[more.length + 4];
        words[0] = "springs";
        words[1] = model;
        System.arraycopy(more, 0, words, 2, more.length);
        words[more.length + 2] = "--out";
        words[more.length + 3] = folder.resolve("s");
        return Run.of(words);
    }

    private double summary(String pattern) throws IOException {
        return figure("s", pattern);
    }

    private double figure(String directory, String pattern) throws IOException {
        Matcher m = Pattern.compile(pattern + "\\D*?(-?[0-9.]+(e-?[0-9]+)?)", Pattern.DOTALL)
            .matcher(Files.readString(folder.resolve(directory).resolve("summary.json")));
        assertThat(m.find()).as(pattern).isTrue();
        return Double.parseDouble(m.group(1));
    }

    private Design written() {
        return ModelFile.read(folder.resolve("s/model.yaml")).design();
    }

    private String edited(String... pathsAndValues) throws IOException {
        ModelFile file = ModelFile.read(Path.of("models/ridge-relay.yaml"));
        for (int i = 0; i < pathsAndValues.length; i += 2) {
            file = file.withValue(pathsAndValues[i], pathsAndValues[i + 1]);
        }
        var bundle = file.bundle();
        for (var e : bundle.files().entrySet()) {
            Files.createDirectories(folder.resolve(e.getKey()).getParent());
            Files.write(folder.resolve(e.getKey()), e.getValue());
        }
        Path path = folder.resolve("edited.yaml");
        Files.writeString(path, bundle.text());
        return path.toString();
    }

    @Test
    void shock_travel_and_lift_off_are_those_of_the_time_domain() throws IOException {
        Run run = springs("models/rough-ride.yaml", "--natural-frequency", "140 Hz");
        assertThat(run.status()).as(run.err()).isZero();
        double told = summary("\"travel\" : \\{.*?\"z\" : \\{.*?\"shock_mm\" : ");
        double level = summary("\"lift_off_level\" : ");
        Design d = written();
        VibrationRun.Options linear = new VibrationRun.Options(true, 0.1, false, 10_000, 0);
        VibrationRun.Result ride = VibrationRun.shock(d, Axis.Z, d.vibration().shock().orElseThrow(), linear, share -> true);
        double peak = 1e3 * ride.travel().z();
        // asked for: 2 %; the wave in the spring, a third of whose mass moves, makes some tenths of it
        assertThat(told).isCloseTo(peak, within(0.02 * peak));
        // at 3 % above the level told the first spring goes slack in time, 3 % below it none does; the housing is pushed down, so that the
        // first swing stretches the springs
        for (double factor : new double[] {0.97, 1.03}) {
            var shock = d.vibration().shock().orElseThrow();
            var scaled = new quietband.model.Vibration.Shock(shock.shape(), -factor * level * shock.peakG(), shock.duration());
            VibrationRun.Result over = VibrationRun.shock(d, Axis.Z, scaled, new VibrationRun.Options(false, 0.1, false, 10_000,
                0), share -> true);
            long slack = over.contacts().stream().filter(c -> !c.stop()).mapToLong(quietband.motion.platform.ContactRecord::times).sum();
            assertThat(slack > 0).as("slack at %s", factor).isEqualTo(factor > 1);
        }
        // the spring is compressed at rest by what it may extend: preload over rate
        double free = 1e3 * d.platform().orElseThrow().springs().get(0).preload() / d.platform().orElseThrow()
            .springs().get(0).stiffness().z();
        assertThat(level * summary("\"travel\" : \\{.*?\"z\" : \\{.*?\"shock_mm\" : ")).isCloseTo(free,
            within(1e-6 * free));
    }

    @Test
    void a_reduction_is_there_from_the_frequency_on_and_just_so() throws IOException {
        Run run = springs("models/ridge-relay.yaml", "--reduction", "20 dB at 300 Hz", "--parts", "rates");
        assertThat(run.status()).as(run.err()).isZero();
        Assembly assembly = new Assembly(written().platform().orElseThrow());
        PlatformMotion motion = new PlatformMotion(assembly);
        double[] re = new double[9];
        double[] im = new double[9];
        for (double f : new double[] {300, 340, 500, 1000, 2000}) {
            motion.at(f);
            motion.accelerationOf(written().oscillator().resonator().position(), re, im);
            double z = Math.hypot(re[8], im[8]);
            // 20 dB is a tenth; the target keeps 0.15 dB, which is 1.7 %, for rounding to parts
            assertThat(z).isLessThan(0.1);
            if (f == 300) {
                assertThat(z).isGreaterThan(0.097);
            }
        }
        // and in time: a dwell at 300 Hz, isolated against bolted down; a loss factor is an exact damper there
        Run dwell = Run.of("simulate", folder.resolve("s/model.yaml"), "--drive", "dwell", "--axis", "z", "--frequency", "300 Hz", "--peak",
            "0.1 g", "--duration", "0.1 s", "--linear", "--out", folder.resolve("d"));
        assertThat(dwell.status()).as(dwell.err()).isZero();
        motion.at(300);
        motion.accelerationOf(written().oscillator().resonator().position(), re, im);
        double isolated = figure("d", "\"isolated\" : \\{.*?\"sensitivity_ppb_per_g\" : ");
        double bare = figure("d", "\"bare\" : \\{.*?\"sensitivity_ppb_per_g\" : ");
        double pushed = Math.hypot(re[8], im[8]);
        // centred springs: the push along z moves the resonator along z alone; a dwell repeats the frequency domain to 1e-3 at least
        assertThat(isolated / bare).isCloseTo(pushed, within(1e-3 * pushed));
    }

    @Test
    void a_tenfold_reduction_from_10_hz_takes_the_box_that_assess_finds_of_the_soft_design() throws IOException {
        Run run = springs("models/ridge-relay.yaml", "--natural-frequency", "90 Hz");
        assertThat(run.status()).as(run.err()).isZero();
        double corner = summary("\"tenfold_from_10_hz\" : \\{.*?\"natural_frequency_hz\" : ");
        double travel = summary("\"tenfold_from_10_hz\" : \\{.*?\"travel_mm\" : ");
        double box = summary("\"tenfold_from_10_hz\" : \\{.*?\"box_mm\" : ");
        // the written platform made soft by hand: rates with the square, dampers with the corner; light springs
        double r = corner / 90;
        Design d = written();
        var q = d.quantities();
        for (Axis a : Axis.ALL) {
            String of = "platform.springs.corners.stiffness." + a.letter();
            q = q.with(of, r * r * d.quantities().value(q.find(of).slot(0)));
            of = "platform.springs.corners.damping." + a.letter();
            q = q.with(of, r * d.quantities().value(q.find(of).slot(0)));
        }
        Design soft = d.with(q.with("platform.springs.corners.mass", 0));
        var told = Assessor.assess(soft).travel().orElseThrow();
        double each = 1e3 * (told.sustained().z() + Math.max(told.shock().z(), told.sag().z()));
        // straight lines in logarithms between points of the curve
        assertThat(travel).isCloseTo(each, within(0.02 * each));
        assertThat(box).isCloseTo(62 + 2 * travel, within(1e-6));
        assertThat(box).isGreaterThan(3 * 62);
        PlatformMotion motion = new PlatformMotion(new Assembly(soft.platform().orElseThrow()));
        double[] re = new double[9];
        double[] im = new double[9];
        motion.at(10);
        motion.accelerationOf(soft.oscillator().resonator().position(), re, im);
        // a tenth at 10 Hz, corners being within 1 % of the 90 Hz
        assertThat(Math.hypot(re[8], im[8])).isCloseTo(0.1, within(2e-3));
        assertThat(Files.readString(folder.resolve("s/report.html"))).contains("big-box lesson");
        assertThat(Files.readString(folder.resolve("s/chart-box.svg"))).contains("largest box allowed").contains("from 10 Hz on");
    }

    @Test
    void hold_meets_the_requirement_of_a_model_that_fails() throws IOException {
        Run run = springs("models/trial-a.yaml", "--hold", "--seed", "4");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Assessor.assess(ModelFile.read(Path.of("models/trial-a.yaml")).design()).requirementMet())
            .contains(false);
        assertThat(Assessor.assess(written()).requirementMet()).contains(true);
    }

    @Test
    void the_first_standing_wave_shows_in_the_response_at_the_computed_frequency_and_is_warned_of() throws IOException {
        String heavy = edited("platform.springs.corners.mass", "4 g", "platform.springs.corners.loss_factor", "1 %");
        Run run = springs(heavy, "--natural-frequency", "90 Hz", "--parts", "rates", "--format", "json");
        assertThat(run.status()).as(run.err()).isZero();
        double surge = summary("\"surge_hz\" : ");
        Design d = written();
        var s = d.platform().orElseThrow().springs().get(0);
        double least = Math.min(s.stiffness().x(), Math.min(s.stiffness().y(), s.stiffness().z()));
        assertThat(surge).isCloseTo(Math.sqrt(least / s.mass()) / 2, within(1e-6 * surge));
        assertThat(run.out()).contains("surge_in_band").contains("lighter springs");
        // the isolated residual along the axis of that spring has its highest point there: where wave and platform ring together, which is
        // surge (1 + (fn/surge)^2) to first order for a line between a held end and a mass; half a per cent covers the second order
        double fn = Math.sqrt(least * 4 / 0.21) / (2 * Math.PI);
        ResidualResponse response = new ResidualResponse(d);
        double[] re = new double[3];
        double[] im = new double[3];
        double most = 0;
        double at = 0;
        for (double f = 0.6 * surge; f < 1.4 * surge; f += 1) {
            response.at(f);
            response.residual(Stack.ISOLATED, re, im);
            double y = Math.hypot(re[1], im[1]);
            if (y > most) {
                most = y;
                at = f;
            }
        }
        assertThat(at).isCloseTo(surge * (1 + fn * fn / surge / surge), within(0.005 * surge));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "platform.mass|8 g|platform.springs.corners.mass|600 g|standing wave",
        "platform.limits.box|{x: 45 mm, y: 80 mm, z: 40 mm}|platform.mass|210 g|no spring makes that fit"})
    void what_no_spring_can_mend_is_refused(String path, String value, String second, String other,
    String told) throws IOException {
        Run run = springs(edited(path, value, second, other), "--natural-frequency", "90 Hz", "--parts", "rates");
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).contains(told).doesNotContain("\tat ");
    }

    @Test
    void a_clearance_below_the_sag_and_a_travel_beyond_it_are_told_with_what_it_would_take() throws IOException {
        Run run = springs(edited("platform.clearance", "{x: 0.02 mm, y: 0.02 mm, z: 0.02 mm}"), "--natural-frequency", "90 Hz",
            "--check");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out().replaceAll("\\s+", " ")).contains("NO sag along z", "NO travel along x", "turned over",
            "mm of clearance, or a natural frequency");
    }

    @Test
    void coils_with_dampers_get_a_lower_corner_for_the_same_reduction_than_lossy_mounts() throws IOException {
        Run run = springs("models/ridge-relay.yaml", "--reduction", "20 dB at 300 Hz", "--parts", "coil");
        assertThat(run.status()).as(run.err()).isZero();
        PlatformMotion motion = new PlatformMotion(new Assembly(written().platform().orElseThrow()));
        double[] re = new double[9];
        double[] im = new double[9];
        for (double f : new double[] {300, 500, 1000, 2000}) {
            motion.at(f);
            motion.accelerationOf(written().oscillator().resonator().position(), re, im);
            assertThat(Math.hypot(re[8], im[8])).isLessThan(0.1);
        }
        // dampers let through in proportion to frequency: the mounts do with 80 Hz
        assertThat(summary("\"natural_frequency_hz\" : \\{.*?\"z\" : ")).isBetween(55.0, 70.0);
        assertThat(run.out().replaceAll("\\s+", " ")).contains("damping of these parts it takes a natural frequency of");
    }

    @Test
    void where_no_coil_can_be_had_the_rates_are_given_and_that_is_told() throws IOException {
        Run run = springs("models/soft-platform.yaml", "--natural-frequency", "2.3 Hz", "--check");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out().replaceAll("\\s+", " ")).contains("NO corners: no coil of standard wire", "springs made to the rates");
        assertThat(summary("\"natural_frequency_hz\" : \\{.*?\"x\" : ")).isCloseTo(2.3, within(0.001));
    }

    @Test
    void a_preload_that_the_travel_uses_up_is_told_with_the_one_it_takes() throws IOException {
        Run run = springs(edited("platform.springs.corners.ends", "compression_only", "platform.springs.corners.preload", "5 N"),
            "--natural-frequency", "90 Hz",
            "--parts", "rates", "--check");
        assertThat(run.status()).isEqualTo(1);
        var z = written().platform().orElseThrow().springs().get(0);
        double used = z.stiffness().z() * Assessor.assess(written()).travel().orElseThrow().counted().z();
        double level = summary("\"lift_off_level\" : ");
        assertThat(level).isLessThan(1).isCloseTo(5 / used, within(1e-9));
        // a tenth above what the travel uses; three digits are written
        Matcher told = Pattern.compile("a preload of ([0-9.]+) N instead of 5.00 N").matcher(run.out().replaceAll("\\s+", " "));
        assertThat(told.find()).isTrue();
        assertThat(Double.parseDouble(told.group(1))).isCloseTo(1.1 * used, within(0.006 * used));
    }

    @Test
    void without_room_for_mass_the_gap_of_a_catalogue_is_stated_and_a_mass_above_its_limit_is_told() throws IOException {
        Run full = springs(edited("platform.limits.mass", "210 g"), "--natural-frequency", "90 Hz", "--catalogue",
            "models/catalogue/coil-springs.csv",
            "--check");
        assertThat(full.status()).isEqualTo(1);
        assertThat(full.out().replaceAll("\\s+", " "))
            .containsPattern("NO natural frequency [xyz] [0-9.]+ Hz, wanted 90.00 Hz \\([+-][0-9.]+ %\\); it would");
        Run heavy = springs(edited("platform.limits.mass", "200 g"), "--natural-frequency", "90 Hz", "--check");
        assertThat(heavy.status()).isEqualTo(1);
        assertThat(heavy.out().replaceAll("\\s+", " ")).contains("NO mass 210.0 g, limit 200.0 g");
    }

    @Test
    void the_nearest_springs_of_a_catalogue_are_brought_to_the_corner_with_ballast_within_the_limit() throws IOException {
        Run run = springs("models/ridge-relay.yaml", "--natural-frequency", "90 Hz", "--catalogue",
            "models/catalogue/coil-springs.csv");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(Files.readString(folder.resolve("s/springs.csv"))).contains("CS-09");
        assertThat(summary("\"ballast_g\" : ")).isBetween(20.0, 50.0);
        assertThat(written().platform().orElseThrow().mass()).isLessThanOrEqualTo(0.26);
        for (Axis a : Axis.ALL) {
            // asked for: 1 %
            assertThat(summary("\"natural_frequency_hz\" : \\{.*?\"" + a.letter() + "\" : ")).isBetween(89.1, 90.9);
        }
    }
}
