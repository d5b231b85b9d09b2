/**
 * Analog lead-lag networks of preferred values in place of a digital filter, found by search under the goal and
 * gain bound of a digital one.
 *
 * <p>Equations: physics.md, Filter design.
 *
 * <p>For other rooms: {@link quietband.filter.analog.NetworkSearch},
 * {@link quietband.filter.analog.PreferredValues}.
 *
 * <p>With them: {@link quietband.filter.analog.FoundNetworks}.
 */
package quietband.filter.analog;
