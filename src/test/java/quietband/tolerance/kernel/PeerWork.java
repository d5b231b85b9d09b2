package quietband.tolerance.kernel;

import java.nio.file.Path;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.Quantities;
import quietband.spectrum.LogGrid;
import quietband.tolerance.draw.ToleranceDraws;
import quietband.tolerance.draw.VariedParts;

/**
 * The work that the speed is compared on: four springs with random rates on three axes, viscous damping, six degrees of
 * freedom, 400 log-spaced frequencies, a correction with random gain and delay per axis, the worst of three axes kept.
 */
public final class PeerWork {

    private static final String MODEL = """
        quietband: 1
        oscillator:
          carrier: 10 MHz
          resonator:
            sensitivity: {x: 0.35 ppb/g, y: -0.22 ppb/g, z: 0.48 ppb/g}
            position: {z: 3 mm}
        platform:
          mass: 210 g
          size: {x: 62 mm, y: 62 mm, z: 24 mm}
          springs:
            - name: corners
              at: [{x: 24 mm, y: 24 mm, z: -3 mm}, {x: -24 mm, y: 24 mm, z: -3 mm},
                   {x: -24 mm, y: -24 mm, z: -3 mm}, {x: 24 mm, y: -24 mm, z: -3 mm}]
              stiffness: {x: 9 N/mm, y: 9 N/mm, z: 11 N/mm}
              damping: 1.8 N*s/m
        cancellation:
          sensor: {place: platform, position: {x: 8 mm, z: 5 mm}}
          error: {delay: 10 us}
        tolerances:
          - {of: platform.springs.stiffness, scale: 6 %}
          - {of: cancellation.error.gain, add: 1 %}
          - {of: cancellation.error.delay, add: 2 us}
        """;

    private final Design design = ModelFile.parse(Path.of("peer.yaml"), MODEL).design();
    private final ToleranceDraws scatter = ToleranceDraws.of(design);
    private final BlockedGrid nodes = new BlockedGrid(LogGrid.between(400, 10, 2000), design);
    private final UnitResponse response = new UnitResponse(design, VariedParts.of(design.quantities(), scatter.entries()), 2000);

    /** The largest residual of a unit over axes and frequencies, 1/g. */
    public double unit(long index) {
        Quantities drawn = scatter.at(scatter.normals(1, index, 0));
        response.fill(design.unit(drawn));
        double most = 0;
        for (FrequencyBlock b : nodes.blocks) {
            response.residual(b, false);
            for (double[] power : response.power[Stack.COMBINED.ordinal()]) {
                for (int t = 0; t < b.n; t++) {
                    most = Math.max(most, power[t]);
                }
            }
        }
        return Math.sqrt(most);
    }

    /** Mean of the worst residuals of some units, ppb/g: to compare with what the other programs print. */
    public double meanPpb(int units) {
        double sum = 0;
        for (int u = 0; u < units; u++) {
            sum += unit(u) * 1e9 / units;
        }
        return sum;
    }
}
