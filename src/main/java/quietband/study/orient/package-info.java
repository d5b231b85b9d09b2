/**
 * The turn of a resonator that serves best, and the supports of its blank compared.
 *
 * <p>For other rooms: {@link quietband.study.orient.OrientStudy}, {@link quietband.study.orient.TriedSupport}.
 */
package quietband.study.orient;
