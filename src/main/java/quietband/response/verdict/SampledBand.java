package quietband.response.verdict;

import java.util.ArrayList;
import java.util.List;
import quietband.response.FrequencyIntegrals;
import quietband.spectrum.AdaptiveCurves;

/** Keeps the curves of a band while a pass goes over the frequencies for integrals; adds no integral of its own. */
final class SampledBand implements FrequencyIntegrals.Part {

    private final AdaptiveCurves.Curves curves;
    private final double from;
    private final double to;
    private final List<Double> frequency = new ArrayList<>();
    private final List<double[]> value = new ArrayList<>();

    SampledBand(AdaptiveCurves.Curves curves, double from, double to) {
        this.curves = curves;
        this.from = from;
        this.to = to;
    }

    @Override
    public int count() {
        return 0;
    }

    @Override
    public double fromHz() {
        return from;
    }

    @Override
    public double toHz() {
        return to;
    }

    @Override
    public boolean asked() {
        return true;
    }

    @Override
    public void at(double f, double[] into, int offset) {
        frequency.add(f);
        value.add(curves.at(f));
    }

    AdaptiveCurves sweep() {
        return AdaptiveCurves.sampled(frequency, value, curves);
    }
}
