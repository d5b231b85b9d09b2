package quietband.model;

import java.util.Arrays;

/** Builds what stands at a place of the format that a model file leaves out. */
final class Defaults {

    private Defaults() { }

    /**
     * The default of a key.
     *
     * @param none whether an enclosing block that does not stand by itself is left out too
     */
    static Written of(Key key, String path, Node where, boolean none) {
        return of(key.form(), key.fallback(), path, where, none);
    }

    static Written of(Form form, double fallback, String path, Node where, boolean none) {
        Written written = new Written(form, path, where, false);
        if (form instanceof Form.Num || form instanceof Form.Spread) {
            int count = form instanceof Form.Spread spread ? spread.keys().size() : 1;
            double[] numbers = new double[count];
            boolean[] absent = new boolean[count];
            Arrays.fill(numbers, fallback);
            Arrays.fill(absent, none || !Double.isFinite(fallback));
            written.numbers(numbers, absent);
        } else if (form instanceof Form.Block block) {
            for (Key key : block.keys()) {
                written.put(key.name(), of(key, path + "." + key.name(), where, none || !block.stands()));
            }
        } else if (form instanceof Form.AxisBlock axes) {
            for (String axis : Form.Spread.XYZ) {
                written.put(axis, of(axes.each(), Double.NaN, path, where, none));
            }
        }
        return written;
    }
}
