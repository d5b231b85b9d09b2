/**
 * From measurements to a model: measured responses and records, and where they agree with a prediction. The inner
 * rooms evaluate readings, fit numbers and trim a built cancellation. Main types:
 * {@link quietband.identification.MeasuredResponse} and {@link quietband.identification.PredictedResponse}.
 *
 * <p>Equations: physics.md, Fit, Readings and lots.
 */
package quietband.identification;
