/**
 * The residual and the band, drawn in the colours of a theme.
 */
package quietband.window.chart;
