/**
 * Cards below the chart: one question each, such
 * as travel, modes, causes, noise, yield.
 */
package quietband.window.card;
