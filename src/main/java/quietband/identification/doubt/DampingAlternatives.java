package quietband.identification.doubt;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import quietband.model.Axis;
import quietband.model.edit.ModelFile;
import quietband.model.quantity.NumberSlot;
import quietband.model.quantity.Quantities;
import quietband.platform.Assembly;

/** The same springs with another kind of damping in place of the one that is free. */
public final class DampingAlternatives {

    private static final Map<String, DampingKind> QUANTITIES = Map.of("platform.springs.damping", DampingKind.VISCOUS,
        "platform.springs.loss_factor", DampingKind.LOSS, "platform.springs.relaxation.stiffness_ratio", DampingKind.RELAXATION,
        "platform.springs.relaxation.corner", DampingKind.RELAXATION, "platform.modal_damping", DampingKind.MODAL);

    /** A model to fit and what is free in it. */
    public record Variant(DampingKind kind, ModelFile model, List<String> free) { }

    private final ModelFile file;
    private final List<String> others = new ArrayList<>();
    private final Set<String> groups = new LinkedHashSet<>();
    private final Set<Axis> axes = new TreeSet<>();
    private final Set<DampingKind> freed = new TreeSet<>();
    private final List<Integer> slots = new ArrayList<>();

    /** For a model and paths that name numbers of it. */
    public DampingAlternatives(ModelFile file, List<String> free) {
        this.file = file;
        Quantities q = file.design().quantities();
        for (String path : free) {
            NumberSlot first = q.find(path).detail(0);
            DampingKind kind = QUANTITIES.get(first.quantity());
            if (kind == null) {
                others.add(path);
                continue;
            }
            freed.add(kind);
            for (int slot : q.find(path).slots()) {
                NumberSlot s = q.slot(slot);
                slots.add(slot);
                if (!s.group().isEmpty()) {
                    groups.add(s.group());
                }
                if (s.axis() >= 0) {
                    axes.add(Axis.ALL.get(s.axis()));
                }
            }
        }
        if (groups.isEmpty() && !freed.isEmpty()) {
            q.slots().stream().filter(s -> s.quantity().equals("platform.springs.stiffness")).forEach(s -> groups.add(s.group()));
        }
        if (axes.isEmpty()) {
            axes.addAll(Axis.ALL);
        }
    }

    /** The kind that is free; empty when none is. */
    public Optional<DampingKind> own() {
        return freed.isEmpty() ? Optional.empty() : Optional.of(freed.size() == 1 ? freed.iterator().next() : DampingKind.AS_FREED);
    }

    /** The model with one kind of damping free and every damping number that was free set to 0. */
    public Variant with(DampingKind kind) {
        Quantities q = file.design().quantities();
        double[] numbers = q.values();
        for (int slot : slots) {
            if (!q.slot(slot).quantity().endsWith(".corner")) {
                numbers[slot] = 0;
            }
        }
        ModelFile bare = file.withQuantities(q.with(numbers));
        double first = new Assembly(file.design().platform().orElseThrow()).modes().frequencyHz(0);
        List<String> free = new ArrayList<>(others);
        ModelFile model = bare;
        if (kind == DampingKind.MODAL) {
            model = model.withValue("platform.modal_damping", "5 %");
            free.add("platform.modal_damping");
            return new Variant(kind, model, free);
        }
        for (String group : groups) {
            String spring = "platform.springs." + group + ".";
            if (kind == DampingKind.RELAXATION) {
                model = relaxing(model, spring, 2 * first);
            }
            for (Axis axis : axes) {
                String a = "." + axis.letter();
                switch (kind) {
                    case VISCOUS -> {
                        double k = bare.design().quantities().valueOf(spring + "stiffness" + a);
                        model = model.withNumber(spring + "damping" + a, 0.1 * k / (2 * Math.PI * first));
                        free.add(spring + "damping" + a);
                    }
                    case LOSS -> {
                        model = model.withNumber(spring + "loss_factor" + a, 0.1);
                        free.add(spring + "loss_factor" + a);
                    }
                    default -> {
                        free.add(spring + "relaxation.stiffness_ratio" + a);
                        free.add(spring + "relaxation.corner" + a);
                    }
                }
            }
        }
        return new Variant(kind, model, free);
    }

    /** Springs whose axes relax; the block is written where the model has none. */
    private ModelFile relaxing(ModelFile model, String spring, double cornerHz) {
        ModelFile changed = model;
        boolean there = model.design().quantities().slots().stream().anyMatch(s -> !s.absent()
            && s.quantity().equals("platform.springs.relaxation.corner") && s.path().startsWith(spring.substring(0, spring.length() - 1)));
        if (!there) {
            String ratios = axes.stream().map(a -> a.letter() + ": 1").collect(Collectors.joining(", "));
            String corners = axes.stream().map(a -> a.letter() + ": " + cornerHz + " Hz").collect(Collectors.joining(", "));
            return changed.withValue(spring + "relaxation", "{stiffness_ratio: {" + ratios + "}, corner: {" + corners + "}}");
        }
        for (Axis axis : axes) {
            changed = changed.withNumber(spring + "relaxation.stiffness_ratio." + axis.letter(), 1)
                .withNumber(spring + "relaxation.corner." + axis.letter(), cornerHz);
        }
        return changed;
    }
}
