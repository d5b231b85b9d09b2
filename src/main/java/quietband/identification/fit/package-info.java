/**
 * From measured responses to the numbers of a model.
 */
package quietband.identification.fit;
