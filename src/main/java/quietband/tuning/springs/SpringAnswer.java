package quietband.tuning.springs;

import java.util.List;
import java.util.Optional;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.platform.ElasticCentre;
import quietband.response.verdict.Assessment;
import quietband.tuning.parts.Elastomer;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.parts.TargetCheck;

/**
 * What came of a target.
 *
 * @param changed    the model with what was chosen
 * @param before     the model as it was
 * @param after      the changed model, read back from its text
 * @param wantedHz   natural frequencies that were aimed at
 * @param cornerHz   natural frequencies of the changed model
 * @param surgeHz    lowest standing wave of any spring with mass; infinite without such
 * @param parts      per group of springs
 * @param shift      by how much the springs' places were moved, m
 * @param ballast    mass added, kg; 0 for none
 * @param ballastAt  its place, m
 * @param elastic    elastic centre of the changed model
 * @param findings   every target and check
 * @param curve      sag and travel against the natural frequency
 * @param liftOff    level at which the first spring would lift off or go slack, as a factor on the stated vibration
 * @param warm       natural frequencies and damping over temperature; empty without elastomer
 * @param search     how the search went, in words; empty without one
 * @param tenfold    frequency over natural frequency from which on the platform takes a tenth away; NaN where damping keeps it from that
 * @param body       largest extent of body and springs, m
 */
public record SpringAnswer(ModelFile changed, Assessment before, Assessment after, Vec wantedHz, Vec cornerHz,
    double surgeHz,
                           List<SpringPart> parts, Vec shift, double ballast, Vec ballastAt, ElasticCentre elastic,
                           List<TargetCheck> findings, TravelOverFrequency curve, double liftOff, Optional<Elastomer> warm,
                           String search, double tenfold, double body) {

    public SpringAnswer {
        parts = List.copyOf(parts);
        findings = List.copyOf(findings);
    }

    /** Largest edge inside of the box that a tenfold reduction from a frequency in Hz on would take, the body as it is, m. */
    public double tenfoldBox(double fromHz) {
        return body + 2 * tenfoldTravel(fromHz);
    }

    /** Travel either way that goes with it, m. */
    public double tenfoldTravel(double fromHz) {
        return curve.eachWay(fromHz / tenfold);
    }

    /** From where on this design takes a tenth away, Hz; NaN where damping keeps it from that. */
    public double tenfoldFromHz() {
        return tenfold * StrictMath.cbrt(cornerHz.x() * cornerHz.y() * cornerHz.z());
    }

    /** Whether every target is met and every check holds. */
    public boolean met() {
        return findings.stream().allMatch(TargetCheck::met);
    }
}
