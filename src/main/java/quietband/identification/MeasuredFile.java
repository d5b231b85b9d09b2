package quietband.identification;

import quietband.identification.MeasuredResponse.Kind;
import quietband.model.Stack;

/**
 * One measured file and what it holds.
 *
 * @param file     name, for messages
 * @param response the numbers
 * @param stack    that was measured; of no meaning but for a sensitivity
 * @param lineHz   distance of the lines of a spectrum the response comes from, which blurs it; 0 when it was measured as it is
 */
public record MeasuredFile(String file, MeasuredResponse response, Stack stack, double lineHz) {

    /** What a person calls the three kinds of measurement. */
    public enum Asked { TRANSMISSIBILITY, SENSITIVITY, PATH }

    /**
     * A measurement taken as what the person says it is.
     *
     * @throws FitException when its unit cannot be that
     */
    public static MeasuredFile of(String file, MeasuredResponse response, Asked asked, Stack stack) {
        boolean perG = response.kind().perG();
        if (asked == Asked.TRANSMISSIBILITY && perG) {
            throw new FitException(file + ": has x_ppb_per_g columns, which are no transmissibility; "
                + "give x_ratio or x_db, or say --measured sensitivity");
        }
        if (asked == Asked.SENSITIVITY && !perG) {
            throw new FitException(file + ": has x_ratio or x_db columns, which are no sensitivity; "
                + "give x_ppb_per_g, or say --measured transmissibility or path");
        }
        Kind kind = switch (asked) {
            case TRANSMISSIBILITY -> Kind.TRANSMISSIBILITY;
            case SENSITIVITY -> Kind.SENSITIVITY;
            case PATH -> perG ? Kind.WEIGHTED_PATH : Kind.PATH;
        };
        return new MeasuredFile(file, response.as(kind), stack, 0);
    }

    /** The same for a response that was worked out from a record over time. */
    public static MeasuredFile of(String file, RecordResponse record, Asked asked, Stack stack) {
        MeasuredFile plain = of(file, record.response(), asked, stack);
        return new MeasuredFile(file, plain.response(), stack, record.resolutionHz());
    }
}
