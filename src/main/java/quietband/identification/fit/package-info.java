/**
 * From measured responses to the numbers of a model with standard errors, and the changed model.
 *
 * <p>Equations: physics.md, Fit.
 *
 * <p>For other rooms: {@link quietband.identification.fit.ModelFit},
 * {@link quietband.identification.fit.FitResult}.
 */
package quietband.identification.fit;
