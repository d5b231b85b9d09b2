package quietband.identification.fit;

import java.util.List;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.doubt.DampingKind;
import quietband.model.Axis;
import quietband.model.edit.ModelFile;
import quietband.units.Dimension;

/**
 * What a fit gives.
 *
 * @param before       the model as it was
 * @param after        with the values found and their uncertainties as tolerances
 * @param values       in the order they were named
 * @param correlation  of the values' errors, row by row; NaN where there is none
 * @param curves       measured, before and after
 * @param modes        of the platform before and after; empty without one
 * @param kinds        kinds of damping on the same data, the likeliest first; empty when no damping was free
 * @param quality      of the fit
 * @param notes        what a person must know
 */
public record FitResult(ModelFile before, ModelFile after, List<Value> values, double[][] correlation, List<Curve> curves,
                     List<Mode> modes, List<KindOfDamping> kinds, Quality quality, List<String> notes) {

    public FitResult {
        values = List.copyOf(values);
        curves = List.copyOf(curves);
        modes = List.copyOf(modes);
        kinds = List.copyOf(kinds);
        notes = List.copyOf(notes);
    }

    /** How sure a value is: found, held at the model's number for lack of information, or at the edge of what makes sense. */
    public enum State { FOUND, HELD, AT_BOUND }

    /**
     * One value, in the base unit of its dimension.
     *
     * @param of            path
     * @param before        in the model
     * @param value         found
     * @param standardError one standard error; NaN when it was not found
     * @param low           of the 95 % interval; NaN when it was not found
     * @param high          of the 95 % interval
     */
    public record Value(String of, Dimension dimension, double before, double value, double standardError, double low,
                        double high, State state) { }

    /** One measured curve. */
    public record Curve(String file, Kind kind, Axis axis, String noise, List<Point> points) {

        public Curve {
            points = List.copyOf(points);
        }
    }

    /**
     * One measured point; magnitudes as ratio or 1/g, phases in rad (NaN where none was measured).
     *
     * @param error     standard uncertainty of the measured number, as a magnitude
     * @param magnitude difference measured less after, in error; of the magnitude
     * @param phase     difference of the phase in error; NaN where none was measured
     * @param outlier   whether it was left out
     */
    public record Point(double frequencyHz, Phasor measured, Phasor before, Phasor after, double error, double magnitude,
                        double phase, boolean outlier) { }

    /** Magnitude and phase (rad; NaN when unknown). */
    public record Phasor(double magnitude, double phase) { }

    /** A mode before and after, with standard errors: frequencies in Hz and damping ratios. */
    public record Mode(String shape, double beforeHz, double afterHz, double errorHz, double beforeRatio, double afterRatio,
                       double errorRatio) { }

    /** A kind of damping and how well it does; criteria in the same unit, the smaller the better. */
    public record KindOfDamping(DampingKind kind, List<String> free, List<Value> values, double aicc, double bic, boolean taken) {

        public KindOfDamping {
            free = List.copyOf(free);
            values = List.copyOf(values);
        }
    }

    /**
     * How good the fit is.
     *
     * @param numbers    real numbers used: two of a point with phase
     * @param outliers   points left out
     * @param chiSquare  reduced, by the uncertainties in use
     * @param rmsBefore  root mean square of the relative differences before, points left out apart
     * @param rmsAfter   the same after
     * @param aicc       Akaike's criterion, small samples
     * @param bic        Schwarz' criterion
     */
    public record Quality(int numbers, int outliers, double chiSquare, double rmsBefore, double rmsAfter, double aicc,
                          double bic) { }
}
