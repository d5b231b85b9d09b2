package quietband.filter.goal;

import quietband.numerics.ConeProgram;

/** What counts in a design, as cones over the filters' unknowns and one number t that is to be least. */
public interface DesignGoal {

    /** Adds the goal's cones: those that hold t, and conditions of its own. */
    void addTo(ConeProgram program);

    /**
     * Looks at a solution between the frequencies used so far and adds what it misses.
     *
     * @return whether anything was added
     */
    boolean refine(double[] x);

    /** The value at some unknowns, in the unit of t. */
    double value(double[] x);

    /** Share by which t may rise for smaller taps. */
    double slack();
}
