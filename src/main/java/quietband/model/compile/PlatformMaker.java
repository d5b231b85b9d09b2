package quietband.model.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quietband.model.Platform;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.format.WrittenValue;

/** Compiles the block {@code platform}. Without {@code inertia} it follows from mass and size each time. */
final class PlatformMaker {

    private PlatformMaker() { }

    static CompiledPart<Platform> compile(WrittenValue block, double[] nominal) {
        int mass = block.get("mass").slot();
        CompiledPart<Optional<Vec>> size = CompiledPart.optionalVec(block.get("size"));
        CompiledPart<Platform.Inertia> inertia = inertia(block, nominal);
        int centre = block.get("centre_of_gravity").slot();
        CompiledPart<List<Platform.Spring>> springs = springs(block.get("springs"));
        int modal = block.get("modal_damping").slot();
        CompiledPart<Optional<Vec>> clearance = CompiledPart.optionalVec(block.get("clearance"));
        CompiledPart<Optional<Platform.Stops>> stops = stops(block.get("stops"));
        int massLimit = block.get("limits").get("mass").slot();
        int box = block.get("limits").get("box").slot();
        return v -> new Platform(v[mass], size.from(v), inertia.from(v), CompiledPart.vec(v, centre), springs.from(v),
            v[modal], clearance.from(v), stops.from(v), v[massLimit], CompiledPart.vec(v, box));
    }

    private static CompiledPart<Platform.Inertia> inertia(WrittenValue block, double[] nominal) {
        WrittenValue inertia = block.get("inertia");
        int xx = inertia.get("xx").slot();
        int yy = inertia.get("yy").slot();
        int zz = inertia.get("zz").slot();
        int xy = inertia.get("xy").slot();
        int xz = inertia.get("xz").slot();
        int yz = inertia.get("yz").slot();
        if (inertia.given()) {
            return v -> new Platform.Inertia(v[xx], v[yy], v[zz], v[xy], v[xz], v[yz]);
        }
        int mass = block.get("mass").slot();
        int size = block.get("size").slot();
        return v -> {
            Platform.Inertia own = Platform.Inertia.ofBlock(v[mass], CompiledPart.vec(v, size));
            return new Platform.Inertia(DerivedNumbers.value(own.xx(), v[xx], nominal[xx]),
                DerivedNumbers.value(own.yy(), v[yy], nominal[yy]), DerivedNumbers.value(own.zz(), v[zz], nominal[zz]),
                v[xy], v[xz], v[yz]);
        };
    }

    private static CompiledPart<Optional<Platform.Stops>> stops(WrittenValue stops) {
        int stiffness = stops.get("stiffness").slot();
        int ratio = stops.get("damping_ratio").slot();
        return stops.given() ? v -> Optional.of(new Platform.Stops(CompiledPart.vec(v, stiffness), CompiledPart.vec(v, ratio)))
            : v -> Optional.empty();
    }

    private static CompiledPart<List<Platform.Spring>> springs(WrittenValue groups) {
        List<CompiledPart<Platform.Spring>> all = new ArrayList<>();
        for (WrittenValue group : groups.items()) {
            for (int place = 1; place <= group.items().size(); place++) {
                all.add(spring(group.text(), place, group.items().get(place - 1)));
            }
        }
        return v -> {
            List<Platform.Spring> made = new ArrayList<>(all.size());
            for (CompiledPart<Platform.Spring> spring : all) {
                made.add(spring.from(v));
            }
            return made;
        };
    }

    private static CompiledPart<Platform.Spring> spring(String group, int place, WrittenValue spring) {
        int at = spring.get("at").slot();
        int stiffness = spring.get("stiffness").slot();
        int damping = spring.get("damping").slot();
        int loss = spring.get("loss_factor").slot();
        int ratio = spring.get("relaxation").get("stiffness_ratio").slot();
        int corner = spring.get("relaxation").get("corner").slot();
        int mass = spring.get("mass").slot();
        CompiledPart<Rotation> orientation = CompiledPart.orientation(spring.get("orientation"));
        boolean compressionOnly = spring.get("ends").text().equals("compression_only");
        int preload = spring.get("preload").slot();
        return v -> new Platform.Spring(group, place, CompiledPart.vec(v, at), CompiledPart.vec(v, stiffness), CompiledPart.vec(v, damping),
            CompiledPart.vec(v, loss), CompiledPart.vec(v, ratio), CompiledPart.vec(v, corner), v[mass],
            orientation.from(v), compressionOnly, v[preload]);
    }
}
