package quietband.study.filter;

import java.util.function.ToDoubleFunction;
import quietband.model.Design;
import quietband.response.limits.PortUse;
import quietband.spectrum.LogGrid;

/**
 * The tuning port: swing against range, harmonics of its curvature, noise of converter and reference.
 *
 * @param use          at the design's tones and over the band
 * @param sensorRad    phase noise of the sensors integrated over the band at the output, rad rms
 * @param quantiserRad the same of the quantiser
 * @param referenceRad the same of the voltage noise of the port
 * @param curvatureRad the same of the curvature under random vibration
 */
public record TuningPort(PortUse use, double sensorRad, double quantiserRad, double referenceRad, double curvatureRad) {

    private static final int POINTS = 160;

    /** For a design with a cancellation. */
    static TuningPort of(Design design) {
        PortUse use = PortUse.of(design, LogGrid.between(POINTS, design.requirement().fromHz(), design.requirement().toHz()));
        return new TuningPort(use, rms(use, PortUse.Noise::sensor), rms(use, PortUse.Noise::quantiser), rms(use, PortUse.Noise::reference),
            rms(use, PortUse.Noise::bent));
    }

    /** sqrt(2 integral of L df) over the band, straight between points. */
    private static double rms(PortUse use, ToDoubleFunction<PortUse.Noise> of) {
        double sum = 0;
        for (int i = 1; i < use.noise().size(); i++) {
            PortUse.Noise a = use.noise().get(i - 1);
            PortUse.Noise b = use.noise().get(i);
            sum += (of.applyAsDouble(a) + of.applyAsDouble(b)) / 2 * (b.offsetHz() - a.offsetHz());
        }
        return Math.sqrt(2 * sum);
    }
}
