package quietband.filter;

import java.util.List;
import org.hipparchus.complex.Complex;
import quietband.cancellation.FilterResponse;
import quietband.model.DigitalFilter;

/** Responses of the three sensors' filters at a frequency. */
@FunctionalInterface
public interface SensorFilters {

    /** F_x, F_y, F_z at f in Hz. */
    Complex[] at(double f);

    /** Of digital filters at a sample rate in Hz. */
    static SensorFilters of(List<DigitalFilter> filters, double sampleRateHz) {
        List<FilterResponse> responses = filters.stream().map(f -> new FilterResponse(f, sampleRateHz)).toList();
        return f -> responses.stream().map(r -> r.at(f)).toArray(Complex[]::new);
    }
}
