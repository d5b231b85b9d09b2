package quietband.response;

import java.util.ArrayList;
import java.util.List;
import quietband.platform.Assembly;
import quietband.platform.DynamicStiffness;

/**
 * One of the platform's six modes.
 *
 * @param frequencyHz  natural frequency, Hz, of M and the static stiffness
 * @param dampingRatio Im(phi^T D(w_n) phi)/(2 w_n^2)
 * @param shape        in words
 * @param energyShares share of displacement x, y, z and rotation about x, y, z in its kinetic energy (length 6)
 */
public record ModeProperties(double frequencyHz, double dampingRatio, String shape, double[] energyShares) {

    /** The six modes, rising in frequency. */
    public static List<ModeProperties> of(Assembly assembly) {
        DynamicStiffness stiffness = new DynamicStiffness(assembly);
        List<ModeProperties> lines = new ArrayList<>();
        for (int n = 0; n < 6; n++) {
            lines.add(new ModeProperties(assembly.modes().frequencyHz(n), stiffness.dampingRatio(n),
                assembly.modes().inWords(n), assembly.modes().energyShares(n)));
        }
        return lines;
    }
}
