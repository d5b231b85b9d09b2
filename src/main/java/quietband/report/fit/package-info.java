/**
 * Results of fit: values with standard errors, curves before and after, modes, the changed model.
 *
 * <p>For other rooms: {@link quietband.report.fit.FitFiles}.
 */
package quietband.report.fit;
