/**
 * The cancellation filter: what the residual asks of it at each frequency, and what a candidate leaves. The inner
 * rooms search for filters of several forms and say how much error they allow. Main types:
 * {@link quietband.filter.FilterTask} and {@link quietband.filter.ResidualTerms}.
 *
 * <p>Equations: physics.md, Filter design, Residual.
 */
package quietband.filter;
