package quietband.tuning.springs;

import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.ElasticCentre;
import quietband.tuning.parts.PlatformNumbers;

/** Brings elastic centre and centre of gravity together by moving the springs. */
final class ElasticCentring {

    private static final double STEP = 1e-5;
    private static final double CLOSE = 1e-9;

    private ElasticCentring() { }

    /** Moves every place by the same hundredths of a millimetre; by how much, m. */
    static Vec meet(PlatformNumbers numbers) {
        Vec moved = Vec.ZERO;
        for (int i = 0; i < 3; i++) {
            Vec by = ElasticCentre.of(new Assembly(numbers.design().platform().orElseThrow())).offset().times(-1);
            Vec rounded = by.map(v -> Math.rint(v / STEP) * STEP);
            if (by.length() < CLOSE || rounded.length() == 0) {
                break;
            }
            numbers.shift(rounded);
            moved = moved.plus(rounded);
        }
        return moved;
    }
}
