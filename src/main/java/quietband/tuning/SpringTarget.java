package quietband.tuning;

import java.util.List;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Vec;
import quietband.platform.Assembly;

/**
 * The corners that a wish comes down to.
 *
 * @param design   to start from
 * @param cornerHz wanted, Hz
 * @param findings about the wish itself
 * @param search   how it was found, in words; empty where it was stated
 */
record SpringTarget(Design design, Vec cornerHz, List<Finding> findings, String search) {

    static SpringTarget of(Design design, SpringWish wish) {
        Vec now = AxisCorners.hz(new Assembly(design.platform().orElseThrow()));
        Optional<Vec> stated = wish.corner();
        double[] wanted = new double[3];
        for (Axis a : Axis.ALL) {
            double f = stated.map(v -> v.get(a)).orElse(Double.NaN);
            wanted[a.ordinal()] = Double.isNaN(f) ? now.get(a) : f;
        }
        return new SpringTarget(design, Vec.of(wanted), List.of(), "");
    }
}
