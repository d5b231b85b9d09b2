package quietband.identification.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import quietband.identification.MeasuredFile;
import quietband.identification.MeasuredResponse;
import quietband.identification.MeasuredResponse.Curve;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.Synthetic;
import quietband.identification.Synthetic.Instrument;
import quietband.identification.doubt.DampingKind;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.spectrum.LogGrid;

/** What is wrong with data is told; several files, outliers and changing noise are taken as they come. */
class FitDataTest {

    private static final ModelFit.Settings PLAIN = new ModelFit.Settings(true, false, Optional.empty());
    private static final List<String> Z = List.of("platform.springs.corners.stiffness.z", "platform.springs.corners.damping.z");
    private static final double[] F = LogGrid.between(40, 15, 500);
    private static final Instrument TOOL = new Instrument(Kind.TRANSMISSIBILITY, "z", 0.02, true, true);

    private final ModelFile truth = FitCoverageTest.model(FitCoverageTest.springs(16, 12, 4, 3), "{z: -3 mm}");
    private final ModelFile wrong = truth.withNumber(Z.get(0), 17_000).withNumber(Z.get(1), 5);
    private final MeasuredFile good = Synthetic.of(truth.design(), F, TOOL, 3);

    /** The good measurement with magnitudes and phases changed. */
    private MeasuredFile spoilt(UnaryOperator<double[]> magnitude, UnaryOperator<double[]> phase, double frequency) {
        Map<Axis, Curve> axes = new EnumMap<>(Axis.class);
        good.response().axes().forEach((a, c) -> axes.put(a, new Curve(magnitude.apply(c.magnitude()),
            c.phase().map(phase), c.relativeError())));
        return new MeasuredFile("spoilt.csv", new MeasuredResponse(Kind.TRANSMISSIBILITY, each(F, v -> v * frequency), axes),
            Stack.BARE, 0);
    }

    private static double[] each(double[] v, java.util.function.DoubleUnaryOperator of) {
        return Arrays.stream(v).map(of).toArray();
    }

    private void tells(MeasuredFile source, String... parts) {
        List<String> notes = ModelFit.of(wrong, List.of(source), Z, PLAIN).notes();
        assertThat(notes.get(0)).contains("spoilt.csv, axis z").contains(parts).contains("correct the file");
    }

    @Test
    void what_is_written_wrongly_is_named() {
        UnaryOperator<double[]> same = UnaryOperator.identity();
        tells(spoilt(same, p -> each(p, v -> v + Math.PI), 1), "sign", "180 deg throughout", "wrong way round");
        tells(spoilt(same, p -> each(p, v -> -v), 1), "other sign");
        tells(spoilt(same, p -> each(p, Math::toRadians), 1), "in rad");
        tells(spoilt(same, p -> IntStream.range(0, p.length).mapToDouble(i -> i < 25 ? p[i] : p[i] + Math.PI).toArray(), 1),
            "jump by 180 deg between", String.format(java.util.Locale.ROOT, "%.6g", F[25]));
        tells(spoilt(m -> each(m, v -> 1000 * v), same, 1), "mg had been written for g in the response");
        tells(spoilt(m -> each(m, v -> 9.80665 * v), same, 1), "m/s^2");
        tells(spoilt(m -> each(m, v -> Math.pow(10, v / 20)), same, 1), "ratios", "column of dB");
        tells(spoilt(same, same, 1e-3), "kHz");
    }

    @Test
    void good_data_raise_no_suspicion_and_whole_turns_of_phase_do_not_matter() {
        MeasuredFile wound = spoilt(UnaryOperator.identity(), p -> IntStream.range(0, p.length).mapToDouble(i -> p[i] - 2 * Math.PI * i)
            .toArray(), 1);
        assertThat(ModelFit.of(wrong, List.of(wound), Z, PLAIN).notes()).isEmpty();
    }

    @Test
    void too_few_points_constant_data_and_a_missing_axis_are_refused() {
        MeasuredFile few = Synthetic.of(truth.design(), new double[] {80}, TOOL, 3);
        assertThatThrownBy(() -> ModelFit.of(wrong, List.of(few), Z, PLAIN)).hasMessageContaining("too few points: 2 numbers")
            .hasMessageContaining("2 are to be found");
        MeasuredFile flat = spoilt(m -> each(m, v -> 1), p -> each(p, v -> 0), 1);
        assertThatThrownBy(() -> ModelFit.of(wrong, List.of(flat), Z, PLAIN)).hasMessageContaining("every value is 1.00000");
        assertThatThrownBy(() -> ModelFit.of(wrong, List.of(good), List.of("platform.springs.corners.stiffness.x"), PLAIN))
            .hasMessageContaining("does not depend").hasMessageContaining("another axis");
    }

    @Test
    void outliers_are_named_and_left_out_unless_kept() {
        MeasuredFile two = spoilt(m -> IntStream.range(0, m.length).mapToDouble(i -> i == 7 || i == 20 ? 3 * m[i] : m[i]).toArray(),
            UnaryOperator.identity(), 1);
        FitResult without = ModelFit.of(wrong, List.of(two), Z, PLAIN);
        assertThat(without.quality().outliers()).isEqualTo(2);
        assertThat(without.notes()).anyMatch(n -> n.contains("2 outliers")
            && n.contains(String.format(java.util.Locale.ROOT, "%.6g Hz", F[20])));
        double honest = ModelFit.of(wrong, List.of(good), Z, PLAIN).values().get(0).value();
        // two of 40 points left out move the value by a fraction of its standard error, 0.3 %
        assertThat(without.values().get(0).value()).isBetween(0.997 * honest, 1.003 * honest);
        FitResult with = ModelFit.of(wrong, List.of(two), Z, new ModelFit.Settings(false, false, Optional.empty()));
        assertThat(with.quality().outliers()).isZero();
        assertThat(with.values().get(0).standardError()).isGreaterThan(5 * without.values().get(0).standardError());
    }

    @Test
    void noise_that_changes_with_frequency_is_found_and_said() {
        double[] f = LogGrid.between(120, 15, 500);
        MeasuredFile quiet = Synthetic.of(truth.design(), f, new Instrument(Kind.TRANSMISSIBILITY, "z", 0.005, true, false), 5);
        MeasuredFile loud = Synthetic.of(truth.design(), f, new Instrument(Kind.TRANSMISSIBILITY, "z", 0.1, true, false), 6);
        Map<Axis, Curve> axes = new EnumMap<>(Axis.class);
        Curve a = quiet.response().axes().get(Axis.Z);
        Curve b = loud.response().axes().get(Axis.Z);
        axes.put(Axis.Z, new Curve(IntStream.range(0, 120).mapToDouble(i -> i < 60 ? b.magnitude()[i] : a.magnitude()[i]).toArray(),
            Optional.of(IntStream.range(0, 120).mapToDouble(i -> i < 60 ? b.phase().orElseThrow()[i] : a.phase().orElseThrow()[i])
                .toArray()), Optional.empty()));
        FitResult fit = ModelFit.of(wrong, List.of(new MeasuredFile("both.csv",
            new MeasuredResponse(Kind.TRANSMISSIBILITY, f, axes), Stack.BARE, 0)),
            Z, PLAIN);
        assertThat(fit.curves().get(0).noise()).contains("changing with frequency");
        List<FitResult.Point> points = fit.curves().get(0).points();
        // a twentyfold step, smoothed over knots half a decade apart: at least fivefold between the ends
        assertThat(points.get(5).error() / points.get(5).after().magnitude())
            .isGreaterThan(5 * points.get(115).error() / points.get(115).after().magnitude());
    }

    @Test
    void the_kind_of_damping_that_made_the_data_has_the_least_criterion() {
        MeasuredFile lossy = Synthetic.of(FitCoverageTest.model("""
            stiffness: {x: 16 N/mm, y: 16 N/mm, z: 12 N/mm}
                  loss_factor: 20 %""", "{z: -3 mm}").design(), F, TOOL, 8);
        FitResult fit = ModelFit.of(wrong, List.of(lossy), Z, ModelFit.Settings.USUAL);
        assertThat(fit.kinds().get(0).kind()).isEqualTo(DampingKind.LOSS);
        assertThat(fit.kinds()).extracting(FitResult.KindOfDamping::kind).containsExactlyInAnyOrder(DampingKind.LOSS, DampingKind.VISCOUS,
            DampingKind.RELAXATION, DampingKind.MODAL);
        assertThat(fit.kinds().get(0).aicc()).isLessThan(fit.kinds().get(1).aicc() - 10);
        assertThat(fit.notes()).anyMatch(n -> n.contains("loss factor damping describes these data better") && n.contains("--damping"));
        FitResult taken = ModelFit.of(wrong, List.of(lossy), Z, new ModelFit.Settings(true, true, Optional.of(DampingKind.AS_FREED)));
        // 40 points of 2 %: a standard error of some 0.3 points
        assertThat(taken.after().design().quantities().valueOf("platform.springs.corners.loss_factor.z")).isBetween(0.19, 0.21);
    }
}
