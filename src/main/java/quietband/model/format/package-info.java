/**
 * The whole format of a model file as one tree: keys, units, ranges, defaults and a line of explanation each; its
 * JSON Schema and examples.
 *
 * <p>For other rooms: {@link quietband.model.format.ModelSchema}.
 */
package quietband.model.format;
