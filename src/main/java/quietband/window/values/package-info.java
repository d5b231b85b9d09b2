/**
 * The list of values on the left: fields, steps
 * by key, search by words of a path.
 */
package quietband.window.values;
