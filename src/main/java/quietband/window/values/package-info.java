/**
 * The values of the model as fields.
 */
package quietband.window.values;
