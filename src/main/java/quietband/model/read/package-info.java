/**
 * From YAML nodes along the format to the value tree; every problem of a file is told with its place, what was
 * found and what would do.
 */
package quietband.model.read;
