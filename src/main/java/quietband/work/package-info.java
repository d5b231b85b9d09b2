/**
 * Work shared among threads; who does which changes nothing.
 */
package quietband.work;
