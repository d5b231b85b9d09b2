/**
 * From sideband and tip-over readings to sensitivity per axis; the test plan.
 */
package quietband.identification.shaker;
