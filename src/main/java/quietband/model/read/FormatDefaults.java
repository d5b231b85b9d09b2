package quietband.model.read;

import java.util.Arrays;
import quietband.model.format.FormatKey;
import quietband.model.format.FormatNode;
import quietband.model.format.WrittenValue;
import quietband.model.text.YamlNode;

/** Builds what stands at a place of the format that a model file leaves out. */
final class FormatDefaults {

    private FormatDefaults() { }

    /**
     * The default of a key.
     *
     * @param none whether an enclosing block that does not stand by itself is left out too
     */
    static WrittenValue of(FormatKey key, String path, YamlNode where, boolean none) {
        return of(key.form(), key.fallback(), path, where, none);
    }

    static WrittenValue of(FormatNode form, double fallback, String path, YamlNode where, boolean none) {
        WrittenValue written = new WrittenValue(form, path, where, false);
        if (form instanceof FormatNode.Num || form instanceof FormatNode.Spread) {
            int count = form instanceof FormatNode.Spread spread ? spread.keys().size() : 1;
            double[] numbers = new double[count];
            boolean[] absent = new boolean[count];
            Arrays.fill(numbers, fallback);
            Arrays.fill(absent, none || !Double.isFinite(fallback));
            written.numbers(numbers, absent);
        } else if (form instanceof FormatNode.Block block) {
            for (FormatKey key : block.keys()) {
                written.put(key.name(), of(key, path + "." + key.name(), where, none || !block.stands()));
            }
        } else if (form instanceof FormatNode.AxisBlock axes) {
            for (String axis : FormatNode.Spread.XYZ) {
                written.put(axis, of(axes.each(), Double.NaN, path, where, none));
            }
        }
        return written;
    }
}
