/**
 * Analog lead-lag networks of preferred values in place of a digital filter.
 */
package quietband.filter.analog;
