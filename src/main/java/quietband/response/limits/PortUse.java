package quietband.response.limits;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.cancellation.CancellationNoise;
import quietband.demand.Decibels;
import quietband.demand.PhaseNoise;
import quietband.model.Axis;
import quietband.model.Cancellation;
import quietband.model.Cancellation.Path;
import quietband.model.Cancellation.Sensor;
import quietband.model.Cancellation.Tuning;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.Vibration;
import quietband.oscillator.Sidebands;
import quietband.platform.Assembly;
import quietband.response.FrequencyIntegrals;
import quietband.response.GridSeeds;
import quietband.response.ResidualResponse;
import quietband.response.SwingTransfer;
import quietband.response.travel.RandomMotion;

/**
 * What the cancellation asks of the tuning port in the fullest stack, and what the port, the converter and the sensors add. With
 * y = slope (v + curvature v^2/2) a tone v = V cos(w t) has a second harmonic slope curvature V^2/4 at 2 w and shifts the
 * mean by as much; noise of variance s^2 shifts it by slope curvature s^2/2 and adds the density of {@link CurvatureNoise}.
 *
 * @param swings per driven axis, or one for all of them
 * @param tones  per tone and driven axis
 * @param noise  over the band, at the output
 * @param rangeV +-, infinite when not given
 * @param known  whether the port has a slope: without one there are neither swings nor tones
 */
public record PortUse(List<Swung> swings, List<Harmonic> tones, List<Noise> noise, double rangeV, boolean known) {

    private static final double DEEPEST_DB = -400;

    /**
     * Swing under one drive.
     *
     * @param row     x, y, z or all
     * @param sigmaV  of the random vibration, V
     * @param tonesV  sum of the tones' peaks, V
     * @param shift   of the mean frequency by curvature: random and tones
     * @param bentRms of the noise that curvature makes of the random part, fractional frequency
     */
    public record Swung(String row, double sigmaV, double tonesV, double shift, double bentRms) {

        /** Three standard deviations and the tones' peaks, V. */
        public double peakV() {
            return RandomMotion.SIGMAS * sigmaV + tonesV;
        }
    }

    /**
     * A tone and what curvature makes of it.
     *
     * @param peakG       of the tone
     * @param swingV      peak at the port
     * @param amplitude   of the second harmonic, peak fractional frequency
     * @param levelDbc    of its sideband at twice the frequency, at the output; minus infinity without curvature
     */
    public record Harmonic(String name, Axis axis, double frequencyHz, double peakG, double swingV, double amplitude, double levelDbc) { }

    /**
     * Phase noise at the output as power ratios per Hz.
     *
     * @param sensor    of the accelerometers alone
     * @param quantiser of the converter
     * @param reference of the port's own voltage noise
     * @param bent      what curvature makes of the random vibration, of the drive that makes most
     * @param staticNoise of the oscillator
     */
    public record Noise(double offsetHz, double sensor, double quantiser, double reference, double bent, double staticNoise) { }

    public PortUse {
        swings = List.copyOf(swings);
        tones = List.copyOf(tones);
        noise = List.copyOf(noise);
    }

    /** For a design with a cancellation, with the noise at some offsets in Hz. */
    public static PortUse of(Design design, double[] offsets) {
        Cancellation c = design.cancellation().orElseThrow();
        Assembly assembly = design.platform().map(Assembly::new).orElse(null);
        ResidualResponse response = new ResidualResponse(design, assembly);
        SwingTransfer swing = new SwingTransfer(response, Stack.fullest(design).sprung());
        double slope = c.tuning().slopePerV();
        List<Harmonic> tones = slope == 0 ? List.of() : tones(design, swing);
        FrequencyIntegrals.Part part = RandomMotion.part(design, assembly, response);
        RandomMotion random = new RandomMotion(design.vibration().together(),
            FrequencyIntegrals.of(new GridSeeds(design, assembly), part)[0]);
        List<Swung> swings = new ArrayList<>();
        List<CurvatureNoise> bent = new ArrayList<>();
        PhaseNoise density = new PhaseNoise(design);
        for (PhaseNoise.Row row : rows(design)) {
            if (slope != 0) {
                double square = row.axes().stream().mapToDouble(a -> random.swing(3, a.ordinal())).sum() / (slope * slope);
                swings.add(swung(row, Math.sqrt(square), tones, c.tuning()));
                bent.add(new CurvatureNoise(design, assembly, f -> {
                    double[] power = swing.squared(f);
                    return row.axes().stream().mapToDouble(a -> power[9 + a.ordinal()] * density.density(a, f)).sum() / (slope * slope);
                }));
            }
        }
        return new PortUse(swings, tones, noise(design, density, bent, offsets), c.tuning().rangeV(), slope != 0);
    }

    /** Every axis that something drives: tones may drive one that the noise leaves alone. */
    private static List<PhaseNoise.Row> rows(Design design) {
        Vibration v = design.vibration();
        List<Axis> driven = Axis.ALL.stream().filter(a -> v.axes().contains(a)
            || v.tones().stream().anyMatch(t -> t.axis().isEmpty() || t.axis().equals(Optional.of(a)))).toList();
        return v.together() ? List.of(new PhaseNoise.Row("all", driven))
            : driven.stream().map(a -> new PhaseNoise.Row(a.letter(), List.of(a))).toList();
    }

    private static Swung swung(PhaseNoise.Row row, double sigma, List<Harmonic> tones, Tuning tuning) {
        double peaks = 0;
        double squares = 0;
        for (Harmonic h : tones) {
            if (row.axes().contains(h.axis())) {
                peaks += h.swingV();
                squares += h.swingV() * h.swingV() / 2;
            }
        }
        double bend = tuning.slopePerV() * tuning.curvaturePerV() / 2;
        return new Swung(row.label(), sigma, peaks, bend * (sigma * sigma + squares), Math.abs(bend) * Math.sqrt(2) * sigma * sigma);
    }

    private static List<Harmonic> tones(Design design, SwingTransfer swing) {
        Tuning tuning = design.cancellation().orElseThrow().tuning();
        List<Harmonic> tones = new ArrayList<>();
        for (Vibration.Tone t : design.vibration().tones()) {
            double[] power = swing.squared(t.frequencyHz()).clone();
            for (Axis axis : t.axes()) {
                double volts = Math.sqrt(power[9 + axis.ordinal()]) * t.peakG() / Math.abs(tuning.slopePerV());
                double second = Math.abs(tuning.slopePerV() * tuning.curvaturePerV()) * volts * volts / 4;
                double level = second == 0 ? Double.NEGATIVE_INFINITY
                    : Sidebands.levelDbc(Sidebands.index(second, 1, design.oscillator().outputHz(), 2 * t.frequencyHz()));
                tones.add(new Harmonic(t.name(), axis, t.frequencyHz(), t.peakG(), volts, second, level));
            }
        }
        return tones;
    }

    private static List<Noise> noise(Design design, PhaseNoise all, List<CurvatureNoise> bent, double[] offsets) {
        Cancellation c = design.cancellation().orElseThrow();
        Sensor s = c.sensor();
        Path p = c.path();
        Sensor silent = new Sensor(s.onPlatform(), s.position(), s.bandwidthHz(), s.resonance(), Vec.ZERO, s.rangeG(), s.crossAxis());
        Path exact = new Path(p.sampleRateHz(), p.latency(), p.highPass(), p.lowPass(), p.filters(), 0);
        CancellationNoise sensor = new CancellationNoise(new Cancellation(c.calibratedEach(), c.weightsPerG(), s, exact,
            c.tuning(), c.error()),
            design.weightsPerG());
        CancellationNoise quantiser = new CancellationNoise(new Cancellation(c.calibratedEach(), c.weightsPerG(), silent, p, c.tuning(),
            c.error()), design.weightsPerG());
        double output = design.oscillator().outputHz();
        double bend = c.tuning().slopePerV() * c.tuning().curvaturePerV() / 2;
        List<Noise> noise = new ArrayList<>();
        for (double f : offsets) {
            double most = bend == 0 ? 0 : bent.stream().mapToDouble(b -> b.at(f)).max().orElse(0);
            noise.add(new Noise(f, Sidebands.phaseNoise(sensor.sensor(f), output, f), Sidebands.phaseNoise(quantiser.sensor(f), output, f),
                all.tuning(f), Sidebands.phaseNoise(bend * bend * most, output, f), all.staticNoise(f)));
        }
        return noise;
    }

    /** A power ratio per Hz in dBc/Hz; NaN for none. */
    public static double decibels(double ratio) {
        return ratio > 0 ? Math.max(DEEPEST_DB, Decibels.ofPower(ratio)) : Double.NaN;
    }
}
