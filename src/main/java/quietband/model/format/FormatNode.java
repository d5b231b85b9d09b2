package quietband.model.format;

import java.util.List;
import java.util.Optional;
import quietband.model.quantity.NumberRange;
import quietband.units.Dimension;

/** What may stand at a place of a model file. The whole format is one tree of these: {@link ModelForm}. */
public sealed interface FormatNode {

    /** A number with a unit. */
    record Num(Dimension dimension, NumberRange range) implements FormatNode { }

    /** What a missing key of a map of numbers means: 0, a mistake, or that there is none. */
    enum Missing { ZERO, REFUSED, NONE }

    /** A map of numbers with fixed keys (x, y, z or xy ... zy); one value in its place holds for all. */
    record Spread(List<String> keys, Num each, Missing missing) implements FormatNode {

        public static final List<String> XYZ = List.of("x", "y", "z");

        public boolean perAxis() {
            return keys.equals(XYZ);
        }
    }

    /** What a text is for. NAME has letters, digits and hyphens and may stand in a path; LABEL is any line. */
    enum Kind { FREE, NAME, LABEL, PATH, FILE }

    /** A text. */
    record Text(Kind kind) implements FormatNode { }

    /** One of some words. */
    record Choice(List<String> words) implements FormatNode { }

    /** x, y, z (with a sign where allowed) or a map {x, y, z} of bare numbers. */
    record Direction(boolean signed) implements FormatNode { }

    /** One axis letter. */
    record OneAxis() implements FormatNode { }

    /** A list of axis letters. */
    record AxisSet() implements FormatNode { }

    /** A list of positions, at least one. */
    record Places(Spread each) implements FormatNode { }

    /**
     * A map with known keys.
     *
     * @param stands whether its numbers keep their defaults, and may be varied, when it is left out
     */
    record Block(List<FormatKey> keys, boolean stands) implements FormatNode {

        static Block of(FormatKey... keys) {
            List<FormatKey> list = List.of(keys);
            return new Block(list, list.stream().noneMatch(FormatKey::required));
        }

        /** The same, with defaults that hold without it although something in it is required once it is there. */
        Block standing() {
            return new Block(keys, true);
        }

        /** The same, with nothing to vary unless it is there. */
        Block notStanding() {
            return new Block(keys, false);
        }

        public Optional<FormatKey> key(String name) {
            return keys.stream().filter(k -> k.name().equals(name)).findFirst();
        }

        public List<String> names() {
            return keys.stream().map(FormatKey::name).toList();
        }
    }

    /** A block for all axes, or a map x, y, z of such blocks; a missing axis has none. */
    record AxisBlock(Block each) implements FormatNode { }

    /**
     * A list of blocks.
     *
     * @param rising key whose value must rise strictly from entry to entry; null where the order is free
     * @param least  fewest entries
     */
    record Entries(Block each, String rising, int least) implements FormatNode { }

    /** A word, or something else in its place. */
    record WordOr(String word, FormatNode other) implements FormatNode { }

    /** Filter coefficients: a list of numbers (width 1) or of rows, for all axes or in a map x, y, z. */
    record Coefficients(int width) implements FormatNode { }

    /** A list of at least two names. */
    record Labels() implements FormatNode { }

    /** An amount whose unit depends on the path beside it. */
    record AnyAmount() implements FormatNode { }
}
