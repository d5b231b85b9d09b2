package quietband.filter.fixedpoint;

import java.util.List;
import java.util.Locale;
import quietband.cancellation.CancellationPath;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.filter.FilterException;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.oscillator.Sidebands;

/**
 * Three filters in words of one length.
 *
 * @param filters in whole numbers, x, y, z
 * @param costDb  how much the largest residual over its limit rises by rounding
 * @param noiseHz where the rounding noise stands highest over sensors and converter
 * @param noiseDb phase noise by rounding of signals over that of sensors and converter there, dB; NaN without a sensor range or noise
 */
public record FixedDesign(List<FixedPoint> filters, double costDb, double noiseHz, double noiseDb) {

    /** Most that rounding may cost, dB. */
    public static final double MOST_DB = 0.5;

    public FixedDesign {
        filters = List.copyOf(filters);
    }

    /** The filters as they come out. */
    public List<DigitalFilter> rounded() {
        return filters.stream().map(FixedPoint::rounded).toList();
    }

    /**
     * Rounds to a word length.
     *
     * @param changed the design with the filters
     * @throws FilterException when that costs more than {@value #MOST_DB} dB; it names the word length that does not
     */
    public static FixedDesign of(Design changed, int bits) {
        List<DigitalFilter> filters = changed.cancellation().orElseThrow().path().filters();
        WorstRatio ratio = new WorstRatio(changed);
        double free = ratio.of(filters);
        double cost = cost(filters, bits, ratio, free);
        if (!(cost <= MOST_DB)) {
            int needed = needed(filters, bits + 1, ratio, free);
            String found = Double.isNaN(cost) ? "makes a section unstable" : String.format(Locale.ROOT,
                "costs %.2f dB of the worst ratio", cost);
            throw new FilterException(String.format(Locale.ROOT, "--bits %d: rounding to %d bits %s, more than %.1f dB; %s", bits, bits,
                found, MOST_DB, needed > FixedPoint.LONGEST ? "no word up to " + FixedPoint.LONGEST + " bits is long enough"
                : "words of " + needed + " bits are needed: take --bits " + needed));
        }
        List<FixedPoint> all = filters.stream().map(f -> FixedPoint.of(f, bits)).toList();
        double[] noise = noise(changed, all);
        return new FixedDesign(all, cost, noise[0], noise[1]);
    }

    /** The least word length at which rounding costs no more than {@value #MOST_DB} dB. */
    public static int needed(Design changed) {
        List<DigitalFilter> filters = changed.cancellation().orElseThrow().path().filters();
        WorstRatio ratio = new WorstRatio(changed);
        return needed(filters, FixedPoint.SHORTEST, ratio, ratio.of(filters));
    }

    private static int needed(List<DigitalFilter> filters, int from, WorstRatio ratio, double free) {
        int bits = from;
        while (bits <= FixedPoint.LONGEST && !(cost(filters, bits, ratio, free) <= MOST_DB)) {
            bits++;
        }
        return bits;
    }

    /** In dB; NaN when a section becomes unstable. */
    private static double cost(List<DigitalFilter> filters, int bits, WorstRatio ratio, double free) {
        List<DigitalFilter> rounded = filters.stream().map(f -> FixedPoint.rounded(f, bits)).toList();
        return rounded.stream().allMatch(FixedPoint::stable) ? 20 * StrictMath.log10(ratio.of(rounded) / free) : Double.NaN;
    }

    private static double[] noise(Design design, List<FixedPoint> filters) {
        Cancellation c = design.cancellation().orElseThrow();
        CancellationPath path = new CancellationPath(c.withoutFilter());
        PhaseNoise noise = new PhaseNoise(design);
        double[] worst = {Double.NaN, Double.NaN};
        for (double f : quietband.spectrum.LogGrid.between(100, design.requirement().fromHz(), Math.min(design.requirement().toHz(),
            c.path().sampleRateHz() / 2))) {
            double sum = 0;
            for (int i = 0; i < 3; i++) {
                double w = path.gain(i) * design.weightsPerG().get(i);
                sum += w * w * path.digitalPower(i, f)
                    * filters.get(i).noiseG2PerHz(f, c.sensor().rangeG().get(i), c.path().sampleRateHz());
            }
            double over = Decibels.ofPower(Sidebands.phaseNoise(sum, design.oscillator().outputHz(), f) / noise.sensor(f));
            if (Double.isFinite(over) && !(over <= worst[1])) {
                worst[0] = f;
                worst[1] = over;
            }
        }
        return worst;
    }
}
