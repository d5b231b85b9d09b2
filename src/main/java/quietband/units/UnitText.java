package quietband.units;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Any unit taken apart into atoms, prefixes, {@code * / ^} and {@code rt}: only to say what a wrong unit is.
 * Exponents of metre, kilogram, second, volt, radian and decibel; roots make them fractions.
 */
final class UnitText {

    private static final String PREFIXES = "GMkcmunp";
    private static final Map<String, double[][]> ATOMS = Map.ofEntries(
        atom("m", 1, 0, 0), atom("in", 1, 0, 0), atom("ft", 1, 0, 0), atom("g", new double[][] {
            {0, 1, 0, 0, 0, 0}, {1, 0, -2, 0, 0, 0}}),
        atom("s", 0, 0, 1), atom("min", 0, 0, 1), atom("h", 0, 0, 1), atom("Hz", 0, 0, -1), atom("N", 1, 1, -2),
        atom("lbf", 1, 1, -2), atom("lb", 0, 1, 0), atom("oz", 0, 1, 0), atom("gram", 0, 1, 0), atom("J", 2, 1, -2),
        atom("W", 2, 1, -3), atom("Pa", -1, 1, -2), atom("%", 0, 0, 0), atom("ppm", 0, 0, 0),
        atom("ppb", 0, 0, 0), atom("1", 0, 0, 0),
        atom("V", new double[][] {{0, 0, 0, 1, 0, 0}}), atom("rad", new double[][] {{0, 0, 0, 0, 1, 0}}),
        atom("deg", new double[][] {{0, 0, 0, 0, 1, 0}}), atom("dB", new double[][] {{0, 0, 0, 0, 0, 1}}),
        atom("dBc", new double[][] {{0, 0, 0, 0, 0, 2}}), atom("dBm", new double[][] {{0, 0, 0, 0, 0, 3}}));
    private static final Map<Dimension, double[]> MEANING = new EnumMap<>(Dimension.class);

    static {
        for (Dimension d : Dimension.values()) {
            if (d != Dimension.NUMBER) {
                List<double[]> all = d == Dimension.RATIO ? List.of(new double[6]) : exponents(d.base());
                MEANING.put(d, all.get(d == Dimension.MASS || d == Dimension.INERTIA ? 0 : all.size() - 1));
            }
        }
    }

    private UnitText() { }

    private static Map.Entry<String, double[][]> atom(String name, double length, double mass, double time) {
        return atom(name, new double[][] {{length, mass, time, 0, 0, 0}});
    }

    private static Map.Entry<String, double[][]> atom(String name, double[][] exponents) {
        return Map.entry(name, exponents);
    }

    /** The dimensions a unit may be of; empty when it is none that a model file knows. */
    static List<Dimension> meanings(String unit) {
        List<Dimension> found = new ArrayList<>();
        for (double[] exponents : exponents(plainSigns(unit))) {
            MEANING.forEach((dimension, own) -> {
                if (Arrays.equals(own, exponents) && !found.contains(dimension)) {
                    found.add(dimension);
                }
            });
        }
        return found;
    }

    /** Whether it can be read as a unit at all. */
    static boolean isUnit(String unit) {
        return !exponents(plainSigns(unit)).isEmpty();
    }

    /** Signs outside the plain alphabet, roots and spaces rewritten as files want them. */
    static String plainSigns(String unit) {
        return unit.replace("\u00b5", "u").replace("\u03bc", "u").replace("\u00b0", "deg").replace("\u221a", "rt")
            .replace("\u00b2", "^2").replace("\u00b7", "*").replace("\u22c5", "*").replace("\u00d7", "*")
            .replace("sqrt(Hz)", "rtHz").replace("(Hz)", "Hz").replace("Hz^0.5", "rtHz").replace("Hz^(1/2)", "rtHz")
            .replaceAll("\\s+", "").replaceAll("^degrees?$", "deg").replaceAll("^inch(es)?$", "in")
            .replaceAll("^grams?$", "g").replaceAll("Ns/m$", "N*s/m");
    }

    /** Every possible set of exponents of a unit, as {@code g} is two things; none when it cannot be read. */
    private static List<double[]> exponents(String unit) {
        List<double[]> sums = List.of(new double[6]);
        int sign = 1;
        for (String token : unit.split("(?=[*/])|(?<=[*/])", 40)) {
            if (token.equals("*") || token.equals("/")) {
                sign = token.equals("/") ? -1 : 1;
                continue;
            }
            List<double[]> next = new ArrayList<>();
            for (double[] sum : sums) {
                for (double[] factor : factor(token)) {
                    next.add(plus(sum, factor, sign));
                }
            }
            sums = next.size() > 64 ? List.of() : next;
        }
        return sums;
    }

    private static List<double[]> factor(String token) {
        int caret = token.indexOf('^');
        String name = caret < 0 ? token : token.substring(0, caret);
        double power = 1;
        if (caret >= 0) {
            String exponent = token.substring(caret + 1);
            if (!exponent.matches("-?[0-9]{1,2}")) {
                return List.of();
            }
            power = Integer.parseInt(exponent);
        }
        if (name.startsWith("rt")) {
            name = name.substring(2);
            power /= 2;
        }
        List<double[]> powers = new ArrayList<>();
        for (double[] own : atomOf(name).orElse(new double[0][])) {
            powers.add(plus(new double[6], own, power));
        }
        return powers;
    }

    private static Optional<double[][]> atomOf(String name) {
        double[][] whole = ATOMS.get(name);
        if (whole == null && name.length() > 1 && PREFIXES.indexOf(name.charAt(0)) >= 0) {
            whole = ATOMS.get(name.substring(1));
            whole = name.equals("kg") ? new double[][] {whole[0]} : whole;
        }
        return Optional.ofNullable(whole);
    }

    private static double[] plus(double[] sum, double[] own, double factor) {
        double[] result = sum.clone();
        for (int i = 0; i < result.length; i++) {
            result[i] += own[i] * factor + 0.0;
        }
        return result;
    }
}
