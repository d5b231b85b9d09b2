/**
 * The sprung platform: a rigid body on elastic, viscous, lossy, relaxing or massive springs, driven by a
 * translation of the housing; its matrices, modes and motion. Main types: {@link quietband.platform.Assembly} and
 * {@link quietband.platform.PlatformMotion}.
 *
 * <p>Equations: physics.md, Rigid body, Springs, Platform motion, Modes.
 */
package quietband.platform;
