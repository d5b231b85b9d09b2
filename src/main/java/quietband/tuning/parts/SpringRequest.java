package quietband.tuning.parts;

import java.util.Optional;
import quietband.model.Vec;

/**
 * What is wanted of the springs. Exactly one of natural frequency, reduction and hold is asked.
 *
 * @param corner    natural frequency of each axis, Hz; NaN on an axis that is to stay as it is
 * @param reduction by how much the platform shall attenuate from a frequency on
 * @param hold      meet the whole requirement together with the cancellation as it stands
 * @param kind      what the springs shall be made of
 * @param damping   damping ratio wanted on the modes of the three axes; empty keeps what is there
 * @param centre    whether the springs' places may move so that elastic centre and centre of gravity meet
 * @param catalogue available springs, where kind is {@link Kind#CATALOGUE}
 * @param seed      of every search
 */
public record SpringRequest(Optional<Vec> corner, Optional<Reduction> reduction, boolean hold, Kind kind,
                         Optional<Double> damping, boolean centre, Optional<SpringCatalogue> catalogue, long seed) {

    /** What springs are made of: to exact rates, coils of wire, elastomer, or from a list; or what suits the model. */
    public enum Kind { SUITED, RATES, COIL, ELASTOMER, CATALOGUE }

    /**
     * The platform alone attenuates at least this much, on every axis, at a frequency and above it in the band.
     *
     * @param decibels    20 log10, above 0
     * @param frequencyHz from here on
     */
    public record Reduction(double decibels, double frequencyHz) { }
}
