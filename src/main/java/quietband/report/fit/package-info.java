/**
 * Results of fit: values with standard errors, curves before and after, modes, the changed model.
 *
 * <p>For other rooms: {@link quietband.report.fit.FitReport}.
 */
package quietband.report.fit;
