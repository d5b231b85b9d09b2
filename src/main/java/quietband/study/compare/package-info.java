/**
 * Two designs, or a prediction and a measurement, side by side: {@code DesignComparison} and {@code MeasurementComparison}.
 *
 * <p>For other rooms: {@link quietband.study.compare.DesignComparison},
 * {@link quietband.study.compare.MeasurementComparison}, {@link quietband.study.compare.ModelDifference}.
 */
package quietband.study.compare;
