package quietband.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quietband.model.Stack;
import quietband.response.Cause;
import quietband.response.Models;
import quietband.response.verdict.Assessor;

/** The verdict in one sentence: what is tightest where it holds, what is broken and by how much where it does not. */
class VerdictSentenceTest {

    private static String sentence(String clearance, String requirement) {
        return VerdictSentence.sentence(Assessor.assess(Models.of(Models.oscillator("") + Models.platform("stiffness: 20 N/mm, damping: "
            + "3 N*s/m", clearance) + "vibration: {sustained: 10 g, axes: [z]}\n" + requirement)));
    }

    // far below its resonance the worst axis, z, keeps its 1.2 ppb/g but for (11/98)^2: 1.2152 ppb/g at 11 Hz; 2.4 is 5.91 dB away
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "2.4 | HOLDS: least margin 5.91 dB (residual)",
        "1.2 | DOES NOT HOLD: residual by 0.11 dB"})
    void a_residual_is_told_by_its_margin(double limit, String words) {
        assertThat(sentence("", "requirement: {band: {from: 10 Hz, to: 11 Hz}, residual: [{frequency: 10 Hz, limit: " + limit
            + " ppb/g}]}\n")).startsWith(words);
    }

    // 10 g on 20 N/mm x 4 and 210 g: 0.2574 mm; of 0.2 mm that is 129 %, of 1 mm all is well and no margin in dB is there to tell
    @Test
    void travel_is_told_by_what_it_uses() {
        assertThat(sentence(", clearance: 0.2 mm", "")).isEqualTo("DOES NOT HOLD: travel uses 129 %");
        assertThat(sentence(", clearance: 1 mm", "")).isEqualTo("HOLDS");
        assertThat(sentence("", "")).isEqualTo("No requirement is stated: no verdict.");
        assertThat(sentence(", clearance: 0.2 mm", "requirement: {band: {from: 10 Hz, to: 11 Hz}, residual: [{frequency: 10 Hz, "
            + "limit: 0.1 ppb/g}]}\n")).matches("DOES NOT HOLD: residual by 21\\.[0-9]+ dB, travel uses 129 %");
    }

    @Test
    void every_stack_and_every_cause_has_a_name_of_its_own() {
        assertThat(Arrays.stream(Stack.values()).map(Stack::key).distinct().count()).isEqualTo(Stack.values().length);
        for (Stack stack : Stack.values()) {
            // the line on top of a report explains the very word
            assertThat(StackName.EXPLAINED).contains(stack.key() + ":");
            assertThat(StackName.capital(stack)).isEqualToIgnoringCase(stack.key()).matches("[A-Z][a-z]+");
        }
        assertThat(Arrays.stream(Cause.values()).map(CauseName::of).distinct().count()).isEqualTo(Cause.values().length);
    }
}
