/**
 * Units in chunks shared by threads, counted so that the number of threads changes nothing.
 */
package quietband.tolerance.campaign;
