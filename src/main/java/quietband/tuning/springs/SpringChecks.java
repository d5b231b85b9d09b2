package quietband.tuning.springs;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.numerics.ImpossibleRequestException;
import quietband.platform.Assembly;
import quietband.platform.AxisFrequencies;
import quietband.platform.BodyExtent;
import quietband.platform.Modes;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.tuning.parts.SpringPart;
import quietband.tuning.parts.SpringStroke;
import quietband.tuning.parts.TargetCheck;

/** What a design of springs has to hold besides its natural frequencies: clearance, mass, box, surge, rotation. */
public final class SpringChecks {

    private final Design design;
    private final Platform platform;
    private final Assessment assessment;
    private final Assembly assembly;

    SpringChecks(Design design, Assessment assessment, Assembly assembly) {
        this.design = design;
        this.platform = design.platform().orElseThrow();
        this.assessment = assessment;
        this.assembly = assembly;
    }

    /** Lowest first standing wave of a spring with mass, both ends held, Hz; infinite without such. */
    public double surgeHz() {
        return assembly.surgeHz();
    }

    List<TargetCheck> all(Vec corner) {
        List<TargetCheck> list = new ArrayList<>();
        double surge = surgeHz();
        double highest = corner.largest();
        if (surge <= highest) {
            throw new ImpossibleRequestException(String.format(Locale.ROOT,
                "a natural frequency of %.4g Hz is above the first standing wave of the springs at %.4g Hz: "
                + "such springs cannot hold the platform that firmly; lighter springs, less mass on them, or a lower "
                + "natural frequency",
                highest, surge));
        }
        if (Double.isFinite(surge)) {
            double top = design.requirement().toHz();
            list.add(TargetCheck.of("surge_in_band", surge > top, String.format(Locale.ROOT,
                "first standing wave of the springs at %.5g Hz, band "
                + "up to %.5g Hz", surge, top),
                "lighter springs or a higher natural frequency; the platform isolates no better than the springs carry there"));
        }
        clearance(list);
        if (Double.isFinite(platform.massLimit())) {
            list.add(TargetCheck.of("mass", platform.mass() <= platform.massLimit() * (1 + 1e-12),
                String.format(Locale.ROOT, "mass %.4g g, limit "
                + "%.4g g", 1e3 * platform.mass(), 1e3 * platform.massLimit()), "less ballast or a higher limit"));
        }
        box(list);
        rotation(list);
        return list;
    }

    private void clearance(List<TargetCheck> list) {
        Travel t = assessment.travel().orElseThrow();
        if (platform.clearance().isEmpty()) {
            return;
        }
        Vec clear = platform.clearance().get();
        for (Axis a : Axis.ALL) {
            double sag = t.sag().get(a);
            if (sag > 0) {
                list.add(TargetCheck.of("sag_" + a.letter(), sag <= clear.get(a), String.format(Locale.ROOT,
                    "sag along %s %.3g mm under 1 g, %.3g mm of clearance", a.letter(), 1e3 * sag, 1e3 * clear.get(a)),
                    "more clearance or a higher natural frequency: turned over or in transport the platform would lie on its stops"));
            }
            double used = t.counted().get(a);
            list.add(TargetCheck.of("clearance_" + a.letter(), used <= clear.get(a), String.format(Locale.ROOT,
                "travel along %s %.3g mm of %.3g mm "
                + "clearance", a.letter(), 1e3 * used, 1e3 * clear.get(a)), takesRoom(used, clear.get(a), a)));
        }
    }

    private String takesRoom(double used, double clear, Axis a) {
        double now = AxisFrequencies.hz(assembly).get(a);
        return String.format(Locale.ROOT, "%.3g mm of clearance, or a natural frequency near %.3g Hz", 1e3 * used,
            now * Math.sqrt(used / clear));
    }

    /** Size that the box must have inside, m; without a clearance the travel counts. */
    public Vec needed() {
        return BodyExtent.box(platform, platform.clearance().orElse(assessment.travel().orElseThrow().counted()));
    }

    private void box(List<TargetCheck> list) {
        Vec need = needed();
        for (Axis a : Axis.ALL) {
            double limit = platform.boxLimit().get(a);
            if (Double.isFinite(limit)) {
                list.add(TargetCheck.of("box_" + a.letter(), need.get(a) <= limit, String.format(Locale.ROOT,
                    "box along %s: %.4g mm for body, "
                    + "springs and clearance, %.4g mm allowed", a.letter(), 1e3 * need.get(a), 1e3 * limit),
                    "a smaller body or springs nearer to its middle, less clearance with a higher natural frequency, or a larger "
                    + "box"));
            }
        }
    }

    private void rotation(List<TargetCheck> list) {
        Modes modes = assembly.modes();
        double coupling = AxisFrequencies.coupling(assembly);
        StringBuilder rock = new StringBuilder();
        for (int n = 0; n < 6; n++) {
            if (modes.inWords(n).startsWith("rotation")) {
                rock.append(rock.length() > 0 ? ", " : "").append(String.format(Locale.ROOT, "%.4g Hz",
                    modes.frequencyHz(n)));
            }
        }
        list.add(TargetCheck.of("rotation", coupling < 0.02, String.format(Locale.ROOT,
            "a push along an axis puts at most %.2g %% of its mode's "
            + "energy into rotation; rotation at %s", 100 * coupling, rock.length() > 0 ? rock : "no mode of its own"),
            "elastic centre at the centre of gravity on every axis: springs alike on both sides, or ballast"));
    }

    /**
     * The springs that go slack first.
     *
     * @param group   where they were written
     * @param level   factor on the stated vibration at which they do
     * @param preload of each, N
     */
    record LiftOff(String group, double level, double preload) { }

    /**
     * Which springs with a preload lift off or go slack first; empty where none can. What moves a turned spring along its own z is never
     * more than {@link SpringStroke} says, so a level is safe; it is sharp where springs stand along an axis.
     */
    Optional<LiftOff> liftOff(List<SpringPart> parts) {
        Vec travel = assessment.travel().orElseThrow().counted();
        return parts.stream().flatMap(part -> liftOff(part, travel).stream()).min(Comparator.comparingDouble(LiftOff::level));
    }

    private Optional<LiftOff> liftOff(SpringPart part, Vec travel) {
        List<Spring> springs = platform.springs().stream().filter(s -> s.group().equals(part.group())).toList();
        boolean pressed = part.perPlace() == 2 || springs.stream().anyMatch(Spring::compressionOnly);
        double stroke = SpringStroke.of(springs, travel);
        return pressed && part.preload() > 0 && stroke > 0 ? Optional.of(new LiftOff(part.group(),
            part.preload() / (part.rate().z() / part.perPlace()) / stroke, part.preload())) : Optional.empty();
    }
}
