/**
 * Two designs, or a prediction and a measurement, side by side: {@link DesignComparison} and {@link MeasurementComparison}.
 */
package quietband.study.compare;
