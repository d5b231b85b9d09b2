package quietband.filter.allowed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.filter.allowed.AllowedErrors.Kind;
import quietband.filter.allowed.AllowedErrors.Span;
import quietband.filter.design.FilterResult;
import quietband.model.Axis;
import quietband.model.Cancellation.PathError;
import quietband.model.Design;
import quietband.response.Models;
import quietband.response.verdict.Assessor;

/** How much error is allowed, against closed forms and against the whole assessment. */
class AllowedErrorsTest {

    /** 1 ppb/g on every axis, sensed as it is, without error: only what errs remains. */
    private static Design ideal(String limit, String error) {
        return Models.of("quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\ncancellation: {sensor: {place: "
            + "housing}, error: {" + error + "}}\nrequirement: {residual: [{frequency: 10 Hz, limit: " + limit + "}]}\n");
    }

    // System:  residual |1 - (1 + e) exp(-j phi)| of one error alone
    // Result:  at 2 kHz 20 dB allows 10 %, 5.73 deg or 7.96 us; 40 dB 1 %, .573 deg or .796 us; 30 dB by the same form
    // Ref:     2 sin(phi/2) = ratio (derived)
    @ParameterizedTest
    @CsvSource({"0.1 ppb/g, 10, 5.7320, 7.9611", "0.0316227766 ppb/g, 3.16227766, 1.811926, 2.516564",
        "0.01 ppb/g, 1, 0.572960, 0.795778"})
    void each_alone_matches_the_closed_form_at_20_30_and_40_dB(String limit, double percent, double degrees, double microseconds) {
        AllowedErrors allowed = new AllowedErrors(ideal(limit, ""));
        for (Axis axis : Axis.ALL) {
            Map<Kind, Span> spans = allowed.at(axis, 2000);
            // as many digits as the table has
            assertThat(100 * spans.get(Kind.GAIN).nearest()).isCloseTo(percent, within(1e-6));
            assertThat(Math.toDegrees(spans.get(Kind.PHASE).nearest())).isCloseTo(degrees, within(1e-4));
            assertThat(1e6 * spans.get(Kind.DELAY).nearest()).isCloseTo(microseconds, within(2e-4));
            assertThat(spans.get(Kind.GAIN).low()).isCloseTo(-percent / 100, within(1e-8));
        }
    }

    @Test
    void what_the_model_errs_already_is_counted_in() {
        // 10 % of room in all: with a lag of 4 deg, |1 - (1+e) exp(-j phi)|^2 = (1+e)^2 - 2 (1+e) cos phi + 1 = 0.01
        AllowedErrors allowed = new AllowedErrors(ideal("0.1 ppb/g", "phase: {x: -4 deg}"));
        double c = Math.cos(Math.toRadians(4));
        Span gain = allowed.at(Axis.X, 100).get(Kind.GAIN);
        assertThat(gain.high()).isCloseTo(c + Math.sqrt(c * c - 0.99) - 1, within(1e-12));
        assertThat(gain.low()).isCloseTo(c - Math.sqrt(c * c - 0.99) - 1, within(1e-12));
        // the phase itself is what is written, not what may be added
        assertThat(Math.toDegrees(allowed.at(Axis.X, 100).get(Kind.PHASE).low())).isCloseTo(-5.7320, within(1e-4));
        // 7 deg of lag exceed it whatever the others do
        assertThat(new AllowedErrors(ideal("0.1 ppb/g", "phase: {x: -7 deg}")).at(Axis.X, 100).get(Kind.PHASE).nearest()).isZero();
    }

    @Test
    void an_error_that_nothing_limits_is_infinite() {
        // twice what there is: half a turn doubles 1 ppb/g and just meets it
        assertThat(new AllowedErrors(ideal("3 ppb/g", "")).at(Axis.Y, 50).get(Kind.PHASE).nearest()).isInfinite();
    }

    @Test
    void the_allowed_value_written_into_the_model_leaves_no_margin() {
        Design design = Models.shipped("ridge-relay.yaml");
        for (AllowedErrors.Least least : new AllowedErrors(design).least()) {
            PathError e = design.cancellation().orElseThrow().error();
            PathError written = switch (least.kind()) {
                case GAIN -> new PathError(e.gain().with(least.axis(), least.value()), e.phase(), e.delay());
                case PHASE -> new PathError(e.gain(), e.phase().with(least.axis(), least.value()), e.delay());
                case DELAY -> new PathError(e.gain(), e.phase(), e.delay().with(least.axis(), least.value()));
            };
            Design erring = design.withCancellation(Optional.of(design.cancellation().orElseThrow().withError(written)));
            assertThat(FilterResult.fullest(Assessor.assess(erring)).worst().marginDb()).as(least.toString()).isCloseTo(0, within(0.02));
        }
    }
}
