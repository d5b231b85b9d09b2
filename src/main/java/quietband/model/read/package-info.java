/**
 * From YAML nodes along the format to the value tree, every problem told.
 */
package quietband.model.read;
