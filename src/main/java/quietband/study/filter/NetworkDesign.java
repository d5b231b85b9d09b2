package quietband.study.filter;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.filter.FilterTask;
import quietband.filter.FilteredResidual;
import quietband.filter.analog.FoundNetworks;
import quietband.filter.analog.NetworkSearch;
import quietband.filter.analog.PreferredValues;
import quietband.model.Design;
import quietband.spectrum.LogGrid;

/**
 * Networks of real parts in place of the digital filter.
 *
 * @param found    the networks
 * @param series   resistors they were chosen from
 * @param residual as the model stands, and with them
 * @param response of each network over the band
 */
public record NetworkDesign(FoundNetworks found, PreferredValues series, ResidualChange residual, List<Response> response) {

    private static final int POINTS = 200;

    public NetworkDesign {
        response = List.copyOf(response);
    }

    /** Gain in dB and phase in deg of the three networks at a frequency (length 3; not copied, do not modify). */
    public record Response(double frequencyHz, double[] gainDb, double[] phaseDeg) { }

    /** Searches. */
    public static NetworkDesign of(FilterTask task, PreferredValues series) {
        FoundNetworks found = NetworkSearch.find(task, series);
        Design design = task.design();
        List<Response> response = Arrays.stream(LogGrid.between(POINTS, design.requirement().fromHz(), design.requirement().toHz()))
            .mapToObj(f -> {
                List<Complex> at = found.networks().stream().map(n -> n.at(f)).toList();
                return new Response(f, at.stream().mapToDouble(v -> 20 * StrictMath.log10(v.norm())).toArray(),
                    at.stream().mapToDouble(v -> Math.toDegrees(v.getArgument())).toArray());
            }).toList();
        return new NetworkDesign(found, series, new ResidualChange(FilteredResidual.of(design),
            FilteredResidual.of(design, found.networks())), response);
    }
}
