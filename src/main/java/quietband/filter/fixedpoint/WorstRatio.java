package quietband.filter.fixedpoint;

import java.util.List;
import quietband.cancellation.FilterResponse;
import quietband.demand.ResidualDemand;
import quietband.filter.PathResponse;
import quietband.filter.ResidualTerms;
import quietband.model.Design;
import quietband.model.DigitalFilter;
import quietband.response.DesignGrid;

/** The fullest stack's largest residual over its limit with one filter after another, on a grid kept for all of them. */
final class WorstRatio {

    private final double[] f;
    private final double rate;
    private final double[][] a;
    private final double[][] c;
    private final double[][] limit;
    private final ResidualDemand demand;

    /** For a design; the grid follows its filters. Without a limit the largest residual counts. */
    WorstRatio(Design design) {
        this.f = DesignGrid.of(design, design.requirement().fromHz(), design.requirement().toHz());
        this.rate = design.cancellation().orElseThrow().path().sampleRateHz();
        this.demand = new ResidualDemand(design);
        ResidualTerms terms = new ResidualTerms(design, design.platform().map(quietband.platform.Assembly::new).orElse(null),
            PathResponse.of(design));
        a = new double[f.length][18];
        c = new double[f.length][6];
        limit = new double[f.length][3];
        for (int n = 0; n < f.length; n++) {
            terms.at(f[n]);
            System.arraycopy(terms.aRe, 0, a[n], 0, 9);
            System.arraycopy(terms.aIm, 0, a[n], 9, 9);
            System.arraycopy(terms.cRe, 0, c[n], 0, 3);
            System.arraycopy(terms.cIm, 0, c[n], 3, 3);
            for (int j = 0; j < 3; j++) {
                limit[n][j] = demand.limit(j, f[n]);
            }
        }
    }

    double of(List<DigitalFilter> filters) {
        List<FilterResponse> responses = filters.stream().map(x -> new FilterResponse(x, rate)).toList();
        double worst = 0;
        double[] re = new double[3];
        double[] im = new double[3];
        for (int n = 0; n < f.length; n++) {
            for (int i = 0; i < 3; i++) {
                org.hipparchus.complex.Complex r = responses.get(i).at(f[n]);
                re[i] = r.getReal();
                im[i] = r.getImaginary();
            }
            worst = Math.max(worst, squared(n, re, im));
        }
        return Math.sqrt(worst);
    }

    private double squared(int n, double[] re, double[] im) {
        double[] over = new double[3];
        for (int j = 0; j < 3; j++) {
            double yr = c[n][j];
            double yi = c[n][3 + j];
            for (int i = 0; i < 3; i++) {
                double ar = a[n][3 * i + j];
                double ai = a[n][9 + 3 * i + j];
                yr -= ar * re[i] - ai * im[i];
                yi -= ar * im[i] + ai * re[i];
            }
            over[j] = (yr * yr + yi * yi) / (limit[n][j] * limit[n][j]);
        }
        return demand.joined(over[0], over[1], over[2]);
    }
}
