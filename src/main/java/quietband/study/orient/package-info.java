/**
 * The turn of a resonator that serves best, and the supports of its blank compared. Main type: {@link OrientStudy}.
 */
package quietband.study.orient;
