/**
 * The sprung platform: a rigid body on elastic, viscous, lossy, relaxing or massive springs, driven by a translation of the
 * housing. Positions enter as offsets from the centre of gravity; the six coordinates are the displacement of the centre
 * of gravity and a small rotation. Main types: {@link quietband.platform.Assembly} (the matrices),
 * {@link quietband.platform.PlatformMotion} (the frequency response) and {@link quietband.platform.Modes}.
 */
package quietband.platform;
