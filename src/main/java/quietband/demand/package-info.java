/**
 * What is asked: limits over frequency, margins in dB, phase noise at the output against its limit, the
 * sensitivity that would just meet it. One place for all rooms above. Main types:
 * {@link quietband.demand.PhaseNoise} and {@link quietband.demand.ResidualDemand}.
 *
 * <p>Equations: physics.md, Sidebands and phase noise, Requirements.
 */
package quietband.demand;
