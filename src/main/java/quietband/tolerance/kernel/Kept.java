package quietband.tolerance.kernel;

import java.util.List;
import quietband.model.Stack;

/** What a search found of one unit's stacks on springs at each of its nodes, kept to fill a table between them. */
public final class Kept {

    /** The stacks that need the platform's equations. */
    static final List<Stack> STACKS = List.of(Stack.ISOLATED, Stack.COMBINED);

    private final double[][][] power = new double[Stack.values().length][][];

    /** Room for a number of nodes. */
    public Kept(int nodes) {
        for (Stack s : STACKS) {
            power[s.ordinal()] = new double[3][nodes];
        }
    }

    /** Takes over the powers of a block, from a place on. */
    public void take(double[][][] found, int at, int n) {
        for (Stack s : STACKS) {
            for (int j = 0; j < 3; j++) {
                System.arraycopy(found[s.ordinal()][j], 0, power[s.ordinal()][j], at, n);
            }
        }
    }

    /** Powers of one of the stacks by axis and node, 1/g^2. */
    double[][] of(Stack stack) {
        return power[stack.ordinal()];
    }
}
