package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Options that were called otherwise are refused with the name they have now. */
class FormerNamesTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "shaker --plan models/ridge-relay.yaml --top=1|--top: unknown option; it is called --max-level now",
        "sort models/lots/ridge-lot.csv --limit 0.3 --want 5|--want: unknown option; it is called --good-units now",
        "simulate models/ridge-relay.yaml --drive random --grid 5|--grid: unknown option; it is called --time-rate now",
        "springs models/trial-a.yaml --corner 90|--corner: unknown option; it is called --natural-frequency now",
        "orient models/trial-a.yaml --goal seen|--goal: 'seen' is none of axis, residual, noise; it is called residual now"})
    void a_former_option_is_refused_with_the_name_of_now(String line, String message) {
        Run run = Run.of((Object[]) line.split(" "));
        assertThat(run.status()).isEqualTo(2);
        assertThat(run.err()).startsWith("quietband: " + message).hasLineCount(2);
    }
}
