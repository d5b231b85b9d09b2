package quietband.model.format;

import static quietband.model.quantity.NumberRange.ANY;
import static quietband.model.quantity.NumberRange.NOT_NEGATIVE;
import static quietband.model.quantity.NumberRange.POSITIVE;

import quietband.units.Dimension;

/** The block {@code platform}. */
final class PlatformForm {

    private PlatformForm() { }

    static FormatNode.Block block() {
        return FormatNode.Block.of(
            FormatKey.num("mass", Dimension.MASS, POSITIVE, "sprung mass").must(),
            FormatKey.axes("size", Dimension.LENGTH, POSITIVE,
                "edges of the uniform block; with inertia beside it, of its corners only").everyAxis(),
            FormatKey.of("inertia", inertia(), "about the centre of gravity; default: that of the uniform block"),
            FormatKey.axes("centre_of_gravity", Dimension.LENGTH, ANY, "from the origin").or(0),
            FormatKey.of("springs", new FormatNode.Entries(spring(), null, 1), "groups of springs").must(),
            FormatKey.num("modal_damping", Dimension.RATIO, NOT_NEGATIVE, "damping ratio added to every mode").or(0),
            FormatKey.axes("clearance", Dimension.LENGTH, NOT_NEGATIVE, "free travel each way, at rest under gravity"),
            FormatKey.of("stops", FormatNode.Block.of(
                FormatKey.axes("stiffness", Dimension.STIFFNESS, NOT_NEGATIVE, "of the stops").everyAxis().must(),
                FormatKey.axes("damping_ratio", Dimension.RATIO, NOT_NEGATIVE, "z of the damper 2 z sqrt(k m)").or(0)),
                "bump stops beyond the clearance"),
            FormatKey.of("limits", FormatNode.Block.of(
                FormatKey.num("mass", Dimension.MASS, POSITIVE, "largest sprung mass").orNone(),
                FormatKey.axes("box", Dimension.LENGTH, POSITIVE, "largest outer size").everyAxis().or(
                    Double.POSITIVE_INFINITY)), "what the design may grow to"));
    }

    private static FormatNode.Block inertia() {
        return FormatNode.Block.of(
            FormatKey.num("xx", Dimension.INERTIA, POSITIVE, "moment about x").must(),
            FormatKey.num("yy", Dimension.INERTIA, POSITIVE, "moment about y").must(),
            FormatKey.num("zz", Dimension.INERTIA, POSITIVE, "moment about z").must(),
            FormatKey.num("xy", Dimension.INERTIA, ANY, "+integral of x y dm").or(0),
            FormatKey.num("xz", Dimension.INERTIA, ANY, "+integral of x z dm").or(0),
            FormatKey.num("yz", Dimension.INERTIA, ANY, "+integral of y z dm").or(0));
    }

    private static FormatNode.Block spring() {
        return FormatNode.Block.of(
            FormatKey.text("name", FormatNode.Kind.NAME, "letters, digits, hyphen; default: the number from 1"),
            FormatKey.of("at", new FormatNode.Places(new FormatNode.Spread(FormatNode.Spread.XYZ, new FormatNode.Num(Dimension.LENGTH, ANY),
                FormatNode.Missing.ZERO)), "where they act, from the origin: one spring at each place").or(0).must(),
            FormatKey.axes("stiffness", Dimension.STIFFNESS, NOT_NEGATIVE, "of each, along its principal axes")
                .everyAxis().must(),
            FormatKey.axes("damping", Dimension.DAMPING, NOT_NEGATIVE, "viscous, of each").or(0),
            FormatKey.axes("loss_factor", Dimension.RATIO, NOT_NEGATIVE, "of the stiffness").or(0),
            FormatKey.of("relaxation", FormatNode.Block.of(
                FormatKey.axes("stiffness_ratio", Dimension.RATIO, NOT_NEGATIVE,
                    "stiffness of the relaxing branch over that of the spring").or(0),
                FormatKey.axes("corner", Dimension.FREQUENCY, POSITIVE, "corner of the relaxing branch").orNone()),
                "a branch of a spring and a damper in series"),
            FormatKey.num("mass", Dimension.MASS, NOT_NEGATIVE, "of each spring itself (surge)").or(0),
            FormatKey.of("orientation", OscillatorForm.orientation(), "takes the platform's axes to the principal axes"),
            FormatKey.word("ends", "bonded: acts both ways; compression_only: cannot pull along its z", "bonded",
                "compression_only"),
            FormatKey.num("preload", Dimension.FORCE, NOT_NEGATIVE, "compression at rest of a compression-only spring").or(0));
    }
}
