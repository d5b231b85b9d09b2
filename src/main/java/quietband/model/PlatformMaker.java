package quietband.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Compiles the block {@code platform}. Without {@code inertia} it follows from mass and size each time. */
final class PlatformMaker {

    private PlatformMaker() { }

    static Made<Platform> compile(Written block, double[] nominal) {
        int mass = block.get("mass").slot();
        Made<Optional<Vec>> size = Made.optionalVec(block.get("size"));
        Made<Platform.Inertia> inertia = inertia(block, nominal);
        int centre = block.get("centre_of_gravity").slot();
        Made<List<Platform.Spring>> springs = springs(block.get("springs"));
        int modal = block.get("modal_damping").slot();
        Made<Optional<Vec>> clearance = Made.optionalVec(block.get("clearance"));
        Made<Optional<Platform.Stops>> stops = stops(block.get("stops"));
        int massLimit = block.get("limits").get("mass").slot();
        int box = block.get("limits").get("box").slot();
        return v -> new Platform(v[mass], size.from(v), inertia.from(v), Made.vec(v, centre), springs.from(v),
            v[modal], clearance.from(v), stops.from(v), v[massLimit], Made.vec(v, box));
    }

    private static Made<Platform.Inertia> inertia(Written block, double[] nominal) {
        Written inertia = block.get("inertia");
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
            Platform.Inertia own = Platform.Inertia.ofBlock(v[mass], Made.vec(v, size));
            return new Platform.Inertia(Followers.value(own.xx(), v[xx], nominal[xx]),
                Followers.value(own.yy(), v[yy], nominal[yy]), Followers.value(own.zz(), v[zz], nominal[zz]),
                v[xy], v[xz], v[yz]);
        };
    }

    private static Made<Optional<Platform.Stops>> stops(Written stops) {
        int stiffness = stops.get("stiffness").slot();
        int ratio = stops.get("damping_ratio").slot();
        return stops.given() ? v -> Optional.of(new Platform.Stops(Made.vec(v, stiffness), Made.vec(v, ratio)))
            : v -> Optional.empty();
    }

    private static Made<List<Platform.Spring>> springs(Written groups) {
        List<Made<Platform.Spring>> all = new ArrayList<>();
        for (Written group : groups.items()) {
            for (int place = 1; place <= group.items().size(); place++) {
                all.add(spring(group.text(), place, group.items().get(place - 1)));
            }
        }
        return v -> {
            List<Platform.Spring> made = new ArrayList<>(all.size());
            for (Made<Platform.Spring> spring : all) {
                made.add(spring.from(v));
            }
            return made;
        };
    }

    private static Made<Platform.Spring> spring(String group, int place, Written spring) {
        int at = spring.get("at").slot();
        int stiffness = spring.get("stiffness").slot();
        int damping = spring.get("damping").slot();
        int loss = spring.get("loss_factor").slot();
        int ratio = spring.get("relaxation").get("stiffness_ratio").slot();
        int corner = spring.get("relaxation").get("corner").slot();
        int mass = spring.get("mass").slot();
        Made<Turn> turn = Made.turn(spring.get("turn"));
        boolean seated = spring.get("ends").text().equals("seated");
        int preload = spring.get("preload").slot();
        return v -> new Platform.Spring(group, place, Made.vec(v, at), Made.vec(v, stiffness), Made.vec(v, damping),
            Made.vec(v, loss), Made.vec(v, ratio), Made.vec(v, corner), v[mass], turn.from(v), seated, v[preload]);
    }
}
