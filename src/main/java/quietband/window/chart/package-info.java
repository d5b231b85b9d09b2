/**
 * The band strip and the residual chart, drawn into
 * memory once a change; cursor and colours.
 */
package quietband.window.chart;
