/**
 * Coil springs, rubber mounts and catalogue springs that make a wanted rate, with stress, stability, length and
 * surge checked.
 *
 * <p>Equations: physics.md, Springs as parts.
 *
 * <p>For other rooms: {@link quietband.tuning.parts.SpringRequest}, {@link quietband.tuning.parts.SpringPart},
 * {@link quietband.tuning.parts.SpringCatalogue}.
 *
 * <p>With them: {@link quietband.tuning.parts.CoilSpring}, {@link quietband.tuning.parts.Elastomer},
 * {@link quietband.tuning.parts.TargetCheck}.
 */
package quietband.tuning.parts;
