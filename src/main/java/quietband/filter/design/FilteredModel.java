package quietband.filter.design;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import quietband.model.Axis;
import quietband.model.DigitalFilter;
import quietband.model.edit.ModelFile;
import quietband.units.Amounts;

/** A model with other digital filters, in a file beside it. */
public final class FilteredModel {

    /** The name of the file with the filters. */
    public static final String FILE = "filter.csv";

    private FilteredModel() { }

    /** The model with these filters for x, y and z in {@value #FILE}, in place of whatever filter it had. */
    public static ModelFile of(ModelFile model, List<DigitalFilter> filters) {
        double rate = model.design().cancellation().orElseThrow().path().sampleRateHz();
        byte[] table = table(filters, rate).getBytes(StandardCharsets.UTF_8);
        return model.withFiles(Map.of(FILE, table)).without("cancellation.path.taps").without("cancellation.path.sections")
            .withValue("cancellation.path.filter", FILE);
    }

    /** Rows {@code sensor_axis,kind,index,b0,b1,b2,a1,a2,rate_hz}, every number as the double it is. */
    static String table(List<DigitalFilter> filters, double rateHz) {
        StringBuilder text = new StringBuilder("sensor_axis,kind,index,b0,b1,b2,a1,a2,rate_hz\n");
        String rate = Amounts.print(rateHz);
        for (Axis axis : Axis.ALL) {
            DigitalFilter filter = filters.get(axis.ordinal());
            for (int n = 0; n < filter.taps().length; n++) {
                text.append(axis.letter()).append(",tap,").append(filter.tapIndex()[n]).append(',')
                    .append(Amounts.print(filter.taps()[n])).append(",,,,,").append(rate).append('\n');
            }
            for (int n = 0; n < filter.sections().length; n++) {
                text.append(axis.letter()).append(",section,").append(n);
                for (double c : filter.sections()[n]) {
                    text.append(',').append(Amounts.print(c));
                }
                text.append(',').append(rate).append('\n');
            }
        }
        return text.toString();
    }
}
