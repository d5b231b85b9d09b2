package quietband.filter.fixedpoint;

import java.util.List;
import quietband.demand.ResidualDemand;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.filter.SensorFilters;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.platform.Assembly;
import quietband.response.DesignGrid;

/** The fullest stack's largest residual over its limit with one filter after another, on a grid kept for all of them. */
final class WorstRatio {

    private final double[] f;
    private final double rate;
    private final List<ResidualTerms.At> terms;
    private final ResidualDemand demand;

    /** For a design; the grid follows its filters. Without a limit the largest residual counts. */
    WorstRatio(Design design) {
        this.f = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
        this.rate = design.cancellation().orElseThrow().path().sampleRateHz();
        this.demand = new ResidualDemand(design);
        this.terms = new ResidualTerms(design, design.platform().map(Assembly::new).orElse(null), PathResponse.of(design)).on(f);
    }

    double of(List<DigitalFilter> filters) {
        SensorFilters responses = SensorFilters.of(filters, rate);
        double worst = 0;
        for (int n = 0; n < f.length; n++) {
            double[] over = terms.get(n).squared(responses.at(f[n]));
            for (int j = 0; j < 3; j++) {
                double limit = demand.limit(j, f[n]);
                over[j] /= limit * limit;
            }
            worst = Math.max(worst, demand.joined(over[0], over[1], over[2]));
        }
        return Math.sqrt(worst);
    }
}
