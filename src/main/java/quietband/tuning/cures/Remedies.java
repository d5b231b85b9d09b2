package quietband.tuning.cures;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.model.quantity.NumberSlot;
import quietband.response.Cause;

/** What can be changed about a design, cause by cause. */
final class Remedies {

    static final String STIFFNESS = "platform_stiffness";

    private static final double FAR = 1e4;
    private static final double LEAST = 1e3;

    private final Design design;
    private final List<NumberSlot> slots;

    Remedies(Design design) {
        this.design = design;
        this.slots = design.quantities().slots();
    }

    /** What makes a cause smaller: one remedy, for the path one per part of it; none where it is ideal already. */
    List<Remedy> of(Cause cause) {
        return switch (cause) {
            case GAIN -> linear(cause, "gain error", "cancellation.error.gain", Vec.ZERO);
            case PHASE -> linear(cause, "phase error", "cancellation.error.phase", Vec.ZERO);
            case DELAY -> linear(cause, "delay error", "cancellation.error.delay", Vec.ZERO);
            case CROSS_AXIS -> linear(cause, "cross-axis reading", "cancellation.sensor.cross_axis", Vec.ZERO);
            case SENSOR_PLACE -> onPlatform() ? linear(cause, "distance of the sensor from the resonator",
                "cancellation.sensor.position", design.oscillator().resonator().position()) : List.of();
            case WEIGHTS -> linear(cause, "weights", "cancellation.weights",
                design.oscillator().resonator().mountedSensitivityPerG());
            case SUPPORT_RESONANCE -> factor(cause.key(), "support resonance",
                "oscillator.resonator.support_resonance.frequency", FAR);
            case PATH -> path();
        };
    }

    private boolean onPlatform() {
        return design.cancellation().map(Cancellation::sensor).map(Cancellation.Sensor::onPlatform).orElse(false);
    }

    private List<Remedy> path() {
        List<Remedy> parts = new ArrayList<>();
        String path = "cancellation.path.";
        parts.addAll(factor("sensor_bandwidth", "sensor bandwidth", "cancellation.sensor.bandwidth", FAR));
        parts.addAll(moved("latency", "latency", path + "latency", (s, v) -> 0, false));
        parts.addAll(factor("low_pass", "low pass", path + "low_pass.frequency", FAR));
        parts.addAll(factor("high_pass", "high pass", path + "high_pass.frequency", 1 / FAR));
        parts.addAll(factor("tuning_bandwidth", "bandwidth of the tuning port", "cancellation.tuning.bandwidth", FAR));
        parts.addAll(factor("sensor_resonance", "sensor resonance", "cancellation.sensor.resonance.frequency", FAR));
        boolean filtered = design.cancellation().stream().flatMap(c -> c.path().filters().stream())
            .anyMatch(f -> !f.isNone());
        if (!filtered) {
            parts.addAll(factor("sample_rate", "sample rate", path + "sample_rate", FAR));
        }
        if (parts.size() > 1) {
            List<PartialChange> all = parts.stream().flatMap(p -> p.slides().stream()).toList();
            parts.add(new Remedy(Cause.PATH.key(), "whole path", design, all));
        }
        return parts;
    }

    /** More damping of every kind that the platform has; modal damping where it has none. */
    List<Remedy> damping() {
        List<Remedy> kinds = new ArrayList<>();
        kinds.addAll(factor("platform_damping", "springs' damping", "platform.springs.damping", 1e3));
        kinds.addAll(factor("platform_loss_factor", "springs' loss factor", "platform.springs.loss_factor", 1e2));
        if (kinds.isEmpty()) {
            kinds.addAll(moved("platform_modal_damping", "modal damping", "platform.modal_damping", (s, v) -> v + 2, false));
        }
        return kinds;
    }

    /** Softer springs. */
    List<Remedy> softer() {
        return factor(STIFFNESS, "springs' stiffness", "platform.springs.stiffness", 1e-4);
    }

    /** Stiffer springs. */
    List<Remedy> stiffer() {
        return factor(STIFFNESS, "springs' stiffness", "platform.springs.stiffness", 1e3);
    }

    /** A less sensitive resonator, and with it the weights that the file writes. */
    Remedy sensitivity(Stack stack) {
        Remedy crystal = moved("sensitivity", "resonator's sensitivity", "oscillator.resonator.sensitivity", (s, v) -> v / LEAST,
            false).get(0);
        List<Remedy> weights = stack.corrected()
            ? moved("weights", "weights", "cancellation.weights", (s, v) -> v / LEAST, false) : List.of();
        return weights.isEmpty() ? crystal : crystal.with(weights.get(0));
    }

    private List<Remedy> factor(String key, String words, String quantity, double factor) {
        return moved(key, words, quantity, (s, v) -> v * factor, true);
    }

    private List<Remedy> moved(String key, String words, String quantity, ToDoubleBiFunction<NumberSlot, Double> ideal, boolean log) {
        List<PartialChange> slides = new ArrayList<>();
        for (int i = 0; i < slots.size(); i++) {
            double now = design.quantities().value(i);
            if (slots.get(i).quantity().equals(quantity) && !slots.get(i).absent() && Double.isFinite(now)) {
                slides.add(new PartialChange(i, now, ideal.applyAsDouble(slots.get(i), now), log));
            }
        }
        return slides.stream().allMatch(s -> s.now() == s.ideal()) ? List.of()
            : List.of(new Remedy(key, words, design, slides));
    }

    private List<Remedy> linear(Cause cause, String words, String quantity, Vec ideal) {
        return moved(cause.key(), words, quantity, (slot, now) -> slot.axis() < 0 ? 0 : ideal.get(slot.axis()), false);
    }
}
