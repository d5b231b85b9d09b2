/**
 * The whole format of a model file as one tree: keys, units, ranges, defaults; its JSON Schema.
 */
package quietband.model.format;
