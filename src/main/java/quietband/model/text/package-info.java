/**
 * Text files, YAML nodes, CSV tables and problems with their places.
 */
package quietband.model.text;
