package quietband.tuning.parts;

import java.util.List;
import java.util.Optional;
import quietband.model.Vec;

/**
 * What stands at each place of a group of springs.
 *
 * @param group    name of the group
 * @param places   how many
 * @param kind     rates, coil, elastomer or catalogue
 * @param name     of the part, for an order
 * @param perPlace how many of it at a place: 1, or 2 as an opposed pair
 * @param rate     of all at a place along the principal axes, N/m
 * @param wanted   the rate that would give the wanted natural frequency exactly, N/m
 * @param mass     of all at a place, kg
 * @param damping  viscous, of a damper at each place beside the springs, N s/m
 * @param loss     loss factor
 * @param preload  compression of each at rest, N; 0 where it needs none
 * @param coil     geometry, when it is a coil spring
 * @param findings what was checked on it
 */
public record SpringPart(String group, int places, String kind, String name, int perPlace, Vec rate, Vec wanted,
    double mass,
                         Vec damping, Vec loss, double preload, Optional<CoilSpring> coil, List<TargetCheck> findings) {

    public SpringPart {
        findings = List.copyOf(findings);
    }
}
