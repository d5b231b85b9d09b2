package quietband.model;

import static quietband.model.Range.ANY;
import static quietband.model.Range.NOT_NEGATIVE;
import static quietband.model.Range.POSITIVE;

import quietband.units.Dimension;

/** The block {@code platform}. */
final class PlatformForm {

    private PlatformForm() { }

    static Form.Block block() {
        return Form.Block.of(
            Key.num("mass", Dimension.MASS, POSITIVE, "sprung mass").must(),
            Key.axes("size", Dimension.LENGTH, POSITIVE,
                "edges of the uniform block; with inertia beside it, of its corners only").everyAxis(),
            Key.of("inertia", inertia(), "about the centre of gravity; default: that of the uniform block"),
            Key.axes("centre_of_gravity", Dimension.LENGTH, ANY, "from the origin").or(0),
            Key.of("springs", new Form.Entries(spring(), null, 1), "groups of springs").must(),
            Key.num("modal_damping", Dimension.RATIO, NOT_NEGATIVE, "damping ratio added to every mode").or(0),
            Key.axes("clearance", Dimension.LENGTH, NOT_NEGATIVE, "free travel each way, at rest under gravity"),
            Key.of("stops", Form.Block.of(
                Key.axes("stiffness", Dimension.STIFFNESS, NOT_NEGATIVE, "of the stops").everyAxis().must(),
                Key.axes("damping_ratio", Dimension.RATIO, NOT_NEGATIVE, "z of the damper 2 z sqrt(k m)").or(0)),
                "bump stops beyond the clearance"),
            Key.of("limits", Form.Block.of(
                Key.num("mass", Dimension.MASS, POSITIVE, "largest sprung mass").orNone(),
                Key.axes("box", Dimension.LENGTH, POSITIVE, "largest outer size").everyAxis().or(
                    Double.POSITIVE_INFINITY)), "what the design may grow to"));
    }

    private static Form.Block inertia() {
        return Form.Block.of(
            Key.num("xx", Dimension.INERTIA, POSITIVE, "moment about x").must(),
            Key.num("yy", Dimension.INERTIA, POSITIVE, "moment about y").must(),
            Key.num("zz", Dimension.INERTIA, POSITIVE, "moment about z").must(),
            Key.num("xy", Dimension.INERTIA, ANY, "+integral of x y dm").or(0),
            Key.num("xz", Dimension.INERTIA, ANY, "+integral of x z dm").or(0),
            Key.num("yz", Dimension.INERTIA, ANY, "+integral of y z dm").or(0));
    }

    private static Form.Block spring() {
        return Form.Block.of(
            Key.text("name", Form.Kind.NAME, "letters, digits, hyphen; default: the number from 1"),
            Key.of("at", new Form.Places(new Form.Spread(Form.Spread.XYZ, new Form.Num(Dimension.LENGTH, ANY),
                Form.Missing.ZERO)), "where they act, from the origin: one spring at each place").or(0).must(),
            Key.axes("stiffness", Dimension.STIFFNESS, NOT_NEGATIVE, "of each, along its principal axes")
                .everyAxis().must(),
            Key.axes("damping", Dimension.DAMPING, NOT_NEGATIVE, "viscous, of each").or(0),
            Key.axes("loss_factor", Dimension.RATIO, NOT_NEGATIVE, "of the stiffness").or(0),
            Key.of("relaxation", Form.Block.of(
                Key.axes("stiffness_ratio", Dimension.RATIO, NOT_NEGATIVE,
                    "stiffness of the relaxing branch over that of the spring").or(0),
                Key.axes("corner", Dimension.FREQUENCY, POSITIVE, "corner of the relaxing branch").orNone()),
                "a branch of a spring and a damper in series"),
            Key.num("mass", Dimension.MASS, NOT_NEGATIVE, "of each spring itself (surge)").or(0),
            Key.of("turn", OscillatorForm.turn(), "takes the platform's axes to the principal axes"),
            Key.word("ends", "held both ways, or seated: cannot pull along its z", "held", "seated"),
            Key.num("preload", Dimension.FORCE, NOT_NEGATIVE, "compression at rest of a seated spring").or(0));
    }
}
