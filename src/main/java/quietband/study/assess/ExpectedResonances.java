package quietband.study.assess;

import java.util.List;
import quietband.identification.shaker.TestPlan;
import quietband.model.Design;

/** Where a shaken unit amplifies: modes of the platform and supports of the resonator within the band, rising, Hz. */
public final class ExpectedResonances {

    private ExpectedResonances() { }

    /** By the model. */
    public static List<Double> of(Design design) {
        return TestPlan.resonances(design);
    }
}
