/**
 * Drawn cards of figures beside the band.
 */
package quietband.window.card;
