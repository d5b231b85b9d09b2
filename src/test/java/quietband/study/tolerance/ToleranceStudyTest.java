package quietband.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.numerics.NormalCurve;
import quietband.tolerance.campaign.MonteCarloResult;
import quietband.tolerance.draw.ScatterModels;
import quietband.tolerance.judge.MonteCarloPlan;

/** A normal gain error of 1 % on 1 ppb/g held to 0.02 ppb/g: good within two deviations, the residual a folded normal. */
class ToleranceStudyTest {

    private static final int UNITS = 20_000;

    private static ToleranceStudy study(String yield) {
        ModelFile file = ModelFile.parse(Path.of("gain.yaml"), "quietband: 1\n"
            + "oscillator: {carrier: 10 MHz, resonator: {sensitivity: {x: 1 ppb/g}}}\ncancellation: {sensor: {place: housing}}\n"
            + "requirement: {band: {from: 10 Hz, to: 2 kHz}, residual: [{frequency: 10 Hz, limit: 0.02 ppb/g}]" + yield + "}\n"
            + "tolerances: [{of: cancellation.error.gain, add: 1 %}]\n");
        MonteCarloResult drawn = ScatterModels.run(file.design(), UNITS, 1, 3);
        return ToleranceStudy.of(file, new MonteCarloPlan(file.design(), 3), new ToleranceStudy.Drawn(drawn, 1), 0.9, 1,
            () -> false);
    }

    @Test
    void yield_and_levels_are_those_of_a_folded_normal() {
        ToleranceStudy study = study("");
        double yield = Erf.erf(2 / Math.sqrt(2));
        double error = 5 / Math.sqrt(UNITS);
        // five standard errors of a share
        assertThat(study.result().yieldInAll().estimate()).isCloseTo(yield, within(error * Math.sqrt(yield * (1 - yield))));
        assertThat(study.result().yieldIn(0)).isEqualTo(study.result().yieldInAll());
        double[] shares = {0.05, 0.5, 0.95, 0.99};
        for (int k = 0; k < shares.length; k++) {
            double share = shares[k];
            double z = NormalCurve.quantile((1 + share) / 2);
            double density = 2 / Math.sqrt(2 * Math.PI) * Math.exp(-z * z / 2);
            // five standard errors of the share over the density of |e|, and half a cell of 0.0314 dB
            assertThat(study.levelPerG()[1][k][1]).isCloseTo(1e-11 * z,
                within(1e-11 * (error * Math.sqrt(share * (1 - share)) / density + 0.002 * z)));
            // bolted down without the correction nothing scatters; a cell of the counts is 0.0314 dB
            assertThat(study.levelPerG()[0][k][1]).isCloseTo(1e-9, within(4e-12));
        }
        assertThat(study.result().asked()).isEmpty();
        assertThat(study.result().yieldMet()).isEmpty();
        assertThat(study.likeliest()).isPresent();
    }

    // the exact one-sided bound p: so many good ones or more have the chance 1 - confidence
    @Test
    void an_asked_yield_is_shown_by_the_one_sided_bound() {
        ToleranceResult result = study(", yield: {share: 95 %, confidence: 80 %}").result();
        int good = (int) result.outcome().met(0);
        double chance = 1 - new BinomialDistribution(UNITS, result.atLeast()).cumulativeProbability(good - 1);
        // the bound is exact; tails are computed to some 1e-9
        assertThat(chance).isCloseTo(0.2, within(1e-6));
        assertThat(result.yieldMet()).contains(result.atLeast() >= 0.95).contains(true);
        assertThat(study(", yield: {share: 96 %, confidence: 80 %}").result().yieldMet()).contains(false);
    }
}
