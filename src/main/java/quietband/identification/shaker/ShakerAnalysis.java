package quietband.identification.shaker;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import quietband.model.Axis;

/** From readings to the sensitivity of each resonator on each axis. */
public final class ShakerAnalysis {

    /** Above this index a sideband is stronger than the carrier. */
    static final double CARRIER_LOST = 1.4347;
    private static final int ROUNDS = 7;
    private static final double MIX_UP_DB = 20 * StrictMath.log10(Math.sqrt(2));

    private final ShakerRules rules;

    private ShakerAnalysis(ShakerRules rules) {
        this.rules = rules;
    }

    /** Every resonator of a run, in the order in which they first stand. */
    public static List<ResonatorSensitivity> of(List<ShakerReading> readings, ShakerRules rules) {
        Map<String, List<ShakerReading>> bySerial = new LinkedHashMap<>();
        readings.forEach(r -> bySerial.computeIfAbsent(r.serial(), s -> new ArrayList<>()).add(r));
        ShakerAnalysis analysis = new ShakerAnalysis(rules);
        List<ResonatorSensitivity> all = new ArrayList<>();
        bySerial.forEach((serial, own) -> all.add(analysis.resonator(serial, own)));
        return all;
    }

    private ResonatorSensitivity resonator(String serial, List<ShakerReading> readings) {
        Map<Axis, AxisReduction> reductions = new EnumMap<>(Axis.class);
        for (Axis axis : Axis.ALL) {
            List<ShakerReading> own = readings.stream().filter(r -> r.axis() == axis).toList();
            if (!own.isEmpty()) {
                reductions.put(axis, new AxisReduction(axis, own, rules));
            }
        }
        Map<Axis, AxisSensitivity> axes = new EnumMap<>(Axis.class);
        boolean cross = readings.stream().anyMatch(ShakerReading::crossRead);
        for (int round = 0; round < (cross ? ROUNDS : 1); round++) {
            Map<Axis, AxisSensitivity> before = new EnumMap<>(axes);
            reductions.forEach((axis, r) -> axes.put(axis, r.reduced(before, reductions)));
        }
        List<String> notes = new ArrayList<>();
        for (AxisSensitivity a : axes.values()) {
            mixUp(a, notes);
        }
        if (axes.size() < 3) {
            notes.add("not all three axes were measured: the vector is that of the measured ones, and too short");
        }
        return new ResonatorSensitivity(serial, axes, notes);
    }

    /** Sidebands and tip-over that differ by the square root of two point at peak taken for rms or the other way. */
    private static void mixUp(AxisSensitivity a, List<String> notes) {
        if (a.turnOver() == null || a.used() == 0 || a.turnOver().perG() == 0) {
            return;
        }
        double db = 20 * StrictMath.log10(Math.abs(a.meanPerG() / a.turnOver().perG()));
        double u = Double.isNaN(a.sigmaPerG()) ? 0 : a.sigmaPerG() / Math.abs(a.meanPerG());
        double t = Double.isNaN(a.turnOver().sigmaPerG()) ? 0 : a.turnOver().sigmaPerG() / Math.abs(a.turnOver().perG());
        double width = Math.max(0.3, 20 / StrictMath.log(10) * 3 * StrictMath.hypot(u, t));
        if (Math.abs(Math.abs(db) - MIX_UP_DB) < width && Math.abs(db) > width) {
            notes.add(String.format(Locale.ROOT, "axis %s: sidebands give %+.2f dB against tip-over; 3.01 dB is rms and peak mixed up: is "
                + "the column %s right?", a.axis().letter(), db, db > 0 ? "rms_g or peak_g (the level is really higher)"
                : "peak_g or rms_g (the level is really lower)"));
        } else if (Math.abs(db) > width) {
            notes.add(String.format(Locale.ROOT, "axis %s: sidebands and tip-over differ by %+.2f dB", a.axis().letter(), db));
        }
    }
}
