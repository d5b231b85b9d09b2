/**
 * Changes of a design: what closes a gap and by how much, and what the design commands search for. Main type for the
 * report: {@link quietband.tuning.cures.Cures}.
 */
package quietband.tuning;
