package quietband.model.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Where a number stands in the format: keys, list entries and, last, an axis.
 *
 * @param steps keys and entries
 * @param tail  axis (x, or xy for cross_axis) that a path may leave out; empty when there is none
 */
public record NumberAddress(List<Step> steps, String tail) {

    public static final NumberAddress ROOT = new NumberAddress(List.of(), "");

    private static final Pattern TOKEN = Pattern.compile("([^\\[\\]]*)(?:\\[([0-9]{1,6})])?");

    /** A key (number 0), or an entry of a list by name and number, with the place in a spring group or 0. */
    record Step(String name, int number, int place) {

        boolean isKey() {
            return number == 0;
        }

        @Override
        public String toString() {
            return place == 0 ? name : name + "[" + place + "]";
        }
    }

    /** A piece of a path as a person writes it: {@code corners[2]}; the index is 0 when there is none. */
    public record Token(String name, int index) { }

    public NumberAddress key(String name) {
        return plus(new Step(name, 0, 0));
    }

    public NumberAddress entry(String name, int number, int place) {
        return plus(new Step(name, number, place));
    }

    public NumberAddress tail(String last) {
        return new NumberAddress(steps, last);
    }

    private NumberAddress plus(Step step) {
        List<Step> longer = new ArrayList<>(steps);
        longer.add(step);
        return new NumberAddress(List.copyOf(longer), tail);
    }

    /** Keys alone. */
    public String quantity() {
        return steps.stream().filter(Step::isKey).map(Step::name).collect(Collectors.joining("."));
    }

    /** Canonical path. */
    @Override
    public String toString() {
        String path = steps.stream().map(Step::toString).collect(Collectors.joining("."));
        return tail.isEmpty() ? path : path + "." + tail;
    }

    /** The path for all places and axes: {@code platform.springs.corners.stiffness}. */
    public String leaf() {
        return steps.stream().map(Step::name).collect(Collectors.joining("."));
    }

    /** The path for all axes: {@code platform.springs.corners[2].stiffness}. */
    public String allAxes() {
        return tail("").toString();
    }

    /** Splits a path into tokens; null when it has no such form. */
    public static List<Token> tokens(String path) {
        List<Token> tokens = new ArrayList<>();
        for (String piece : path.strip().split("\\.", -1)) {
            Matcher matcher = TOKEN.matcher(piece);
            if (!matcher.matches() || piece.isEmpty()) {
                return null;
            }
            String index = matcher.group(2);
            tokens.add(new Token(matcher.group(1), index == null ? 0 : Integer.parseInt(index)));
        }
        return tokens;
    }

    /** Whether an entry is one of those a group was split into: its name and the number of a place. */
    public static boolean family(String group, String entry) {
        return entry.startsWith(group + "-") && entry.substring(group.length() + 1).matches("[0-9]{1,6}");
    }

    /**
     * Whether a path names this number, alone or among others.
     *
     * @param split also takes the name of a group for the entries it was split into, and its places for their numbers
     */
    boolean matches(List<Token> tokens, boolean split) {
        return matches(tokens, 0, 0, split);
    }

    private static boolean names(Token token, Step step, boolean split) {
        String number = "" + step.number();
        if (token.name().equals(step.name())
            || (token.name().equals(number) && !family(number, step.name()))) {
            return token.index() == 0 || token.index() == step.place();
        }
        return split && family(token.name(), step.name())
            && (token.index() == 0 || step.name().equals(token.name() + "-" + token.index()));
    }

    private boolean matches(List<Token> tokens, int t, int s, boolean split) {
        if (s == steps.size()) {
            boolean axis = t == tokens.size() - 1 && tokens.get(t).equals(new Token(tail, 0)) && !tail.isEmpty();
            return t == tokens.size() || axis;
        }
        Step step = steps.get(s);
        if (!step.isKey() && matches(tokens, t, s + 1, split)) {
            return true;
        }
        if (t == tokens.size()) {
            return false;
        }
        Token token = tokens.get(t);
        if (!step.isKey()) {
            return names(token, step, split) && matches(tokens, t + 1, s + 1, split);
        }
        if (!token.name().equals(step.name())) {
            return false;
        }
        if (token.index() == 0) {
            return matches(tokens, t + 1, s + 1, split);
        }
        boolean entry = s + 1 < steps.size() && steps.get(s + 1).number() == token.index();
        return entry && matches(tokens, t + 1, s + 2, split);
    }
}
