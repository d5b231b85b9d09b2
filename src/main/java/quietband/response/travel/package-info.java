/**
 * Travel of the platform in its housing: sag, sustained, random, shock; springs that go slack.
 *
 * <p>Equations: physics.md, Travel.
 *
 * <p>For other rooms: {@link quietband.response.travel.Travel}.
 * With them: {@link quietband.response.travel.RandomMotion}.
 */
package quietband.response.travel;
