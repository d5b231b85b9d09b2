/**
 * Changes to a model text that leave the rest byte for byte; models as files.
 */
package quietband.model.edit;
