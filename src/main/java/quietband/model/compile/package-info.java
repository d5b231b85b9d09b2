/**
 * From the checked value tree to slots for every number and to blocks as functions of them.
 */
package quietband.model.compile;
