/**
 * One design in the frequency domain: the residual sensitivity of every stack, the phase noise and sidebands it makes, travel,
 * ranges, coverage and verdict. Main types: {@link quietband.response.ResidualResponse} (the physics at one frequency)
 * and {@link quietband.response.verdict.Assessment} (everything {@code assess} says about a design).
 */
package quietband.response;
