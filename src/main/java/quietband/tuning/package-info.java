/**
 * Changes of a design: what closes a gap and by how much, and what the design commands search for. Main type for the
 * report: {@link quietband.tuning.Cures}.
 */
package quietband.tuning;
