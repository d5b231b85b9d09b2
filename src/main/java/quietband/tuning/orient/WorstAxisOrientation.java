package quietband.tuning.orient;

import quietband.model.Vec;

/** The largest component of the mounted vector, 1/g. At best all three are equal: |G|/sqrt 3. */
final class WorstAxisOrientation implements OrientationGoal {

    @Override
    public double of(Vec g, Vec weights, double enough) {
        return Math.max(Math.abs(g.x()), Math.max(Math.abs(g.y()), Math.abs(g.z())));
    }

    @Override
    public boolean even() {
        return true;
    }
}
