package quietband.platform;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * The platform relative to its housing as first-order equations, x' = F x + G a: the state is the six relative coordinates,
 * their rates, and six coordinates for each distinct relaxation corner (the ends of the Maxwell branches):
 * <pre>
 *   M r'' + C r' + K r + sum K_N (r - s) = -M T a,     s' = corner (r - s)
 * </pre>
 * Springs are without mass here. A loss factor has no exact form in time; it is taken as viscous, mode by mode:
 * C gains M Phi [phi_m^T K_loss phi_n / sqrt(w_m w_n)] Phi^T M, which dissipates the same at each natural frequency and
 * never feeds energy in.
 */
public final class RelativeMotion {

    private final int order;
    private final RealMatrix dynamics;

    /** For one platform. */
    public RelativeMotion(Assembly assembly) {
        int branches = assembly.relaxing().size();
        order = 12 + 6 * branches;
        RealMatrix inverse = new LUDecomposition(Assembly.square(assembly.mass())).getSolver().getInverse();
        RealMatrix stiffness = Assembly.square(assembly.stiffness());
        for (Assembly.Relaxing r : assembly.relaxing()) {
            stiffness = stiffness.add(Assembly.square(r.stiffness()));
        }
        RealMatrix damping = Assembly.square(assembly.damping()).add(viscousLoss(assembly));
        dynamics = new Array2DRowRealMatrix(order, order);
        for (int i = 0; i < 6; i++) {
            dynamics.setEntry(i, 6 + i, 1);
        }
        dynamics.setSubMatrix(inverse.multiply(stiffness).scalarMultiply(-1).getData(), 6, 0);
        dynamics.setSubMatrix(inverse.multiply(damping).scalarMultiply(-1).getData(), 6, 6);
        for (int b = 0; b < branches; b++) {
            Assembly.Relaxing r = assembly.relaxing().get(b);
            int at = 12 + 6 * b;
            dynamics.setSubMatrix(inverse.multiply(Assembly.square(r.stiffness())).getData(), 6, at);
            for (int i = 0; i < 6; i++) {
                dynamics.setEntry(at + i, i, r.corner());
                dynamics.setEntry(at + i, at + i, -r.corner());
            }
        }
    }

    private static RealMatrix viscousLoss(Assembly assembly) {
        Modes modes = assembly.modes();
        double[][] shapes = new double[6][];
        double[][] shared = new double[6][6];
        for (int a = 0; a < 6; a++) {
            shapes[a] = modes.shape(a);
            for (int b = 0; b < 6; b++) {
                shared[a][b] = modes.project(assembly.loss(), a, b) / Math.sqrt(modes.omega(a) * modes.omega(b));
            }
        }
        RealMatrix momentum = new Array2DRowRealMatrix(shapes, false).multiply(Assembly.square(assembly.mass()));
        return momentum.transposeMultiply(new Array2DRowRealMatrix(shared, false)).multiply(momentum);
    }

    /** Number of states. */
    public int order() {
        return order;
    }

    /** F, square of the order; not copied. */
    public RealMatrix dynamics() {
        return dynamics;
    }

    /** The entry of G for a state and a drive axis: -1 for the rate of the coordinate of that axis, else 0 (a in m/s^2). */
    public double drive(int state, int axis) {
        return state == 6 + axis ? -1 : 0;
    }
}
