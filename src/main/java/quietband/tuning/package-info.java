/**
 * Changes of a design that serve a target: springs and parts, the orientation of the resonator, quantities swept
 * or searched, cures of gaps. Each inner room is one of these.
 */
package quietband.tuning;
