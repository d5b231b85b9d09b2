/**
 * From measurements to a model: what was measured, where it agrees with a prediction and which values would explain it.
 */
package quietband.identification;
