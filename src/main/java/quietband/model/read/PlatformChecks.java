package quietband.model.read;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import quietband.model.format.WrittenValue;
import quietband.model.text.FileProblems;

/** What must hold between the numbers of a platform. */
final class PlatformChecks {

    private static final double ROUNDING = 1e-9;

    private final WrittenValue block;
    private final FileProblems problems;

    PlatformChecks(WrittenValue platform, FileProblems problems) {
        this.block = platform;
        this.problems = problems;
    }

    void run() {
        WrittenValue inertia = block.get("inertia");
        if (!block.get("size").given() && !inertia.given() && block.get("mass").given()) {
            problems.add(block.node(), block.path(), "lacks size and inertia",
                "write one: size: {x: 62 mm, y: 62 mm, z: 24 mm} or inertia: {xx: .., yy: .., zz: ..}");
        }
        if (inertia.good()) {
            inertia(inertia);
        }
        for (WrittenValue spring : block.get("springs").items()) {
            spring(spring);
        }
        if (block.get("stops").given() && !block.get("clearance").given()) {
            problems.warn(block.get("stops").node(), "platform.stops", "do nothing without clearance",
                "add platform.clearance");
        }
        WrittenValue limit = block.get("limits").get("mass");
        if (limit.good() && block.get("mass").good() && block.get("mass").number() > limit.number()) {
            problems.warn(limit.node(), limit.path(), "the mass is above its limit", "");
        }
    }

    private void spring(WrittenValue spring) {
        boolean compressionOnly = spring.get("ends").text().equals("compression_only");
        WrittenValue preload = spring.get("preload");
        if (preload.given() && !compressionOnly) {
            problems.warn(preload.node(), preload.path(), "does nothing without 'ends: compression_only'", "");
        }
        WrittenValue relaxation = spring.get("relaxation");
        if (relaxation.get("stiffness_ratio").given() != relaxation.get("corner").given()) {
            problems.warn(relaxation.node(), relaxation.path(),
                "does nothing without both stiffness_ratio and corner", "");
        }
    }

    private void inertia(WrittenValue inertia) {
        double xx = inertia.get("xx").number();
        double yy = inertia.get("yy").number();
        double zz = inertia.get("zz").number();
        double xy = -inertia.get("xy").number();
        double xz = -inertia.get("xz").number();
        double yz = -inertia.get("yz").number();
        String wrong = physical(new double[][] {{xx, xy, xz}, {xy, yy, yz}, {xz, yz, zz}});
        if (!wrong.isEmpty()) {
            problems.add(inertia.node(), inertia.path(), "no rigid body has it: " + wrong,
                "check the moments and the signs of the products");
        }
    }

    /** Why a symmetric matrix is no inertia matrix; empty when it is one. */
    static String physical(double[][] matrix) {
        double scale = matrix[0][0] + matrix[1][1] + matrix[2][2];
        if (!(scale > 0) || Double.isInfinite(scale)) {
            return "a moment is not above 0";
        }
        double[][] scaled = new double[3][3];
        for (int i = 0; i < 9; i++) {
            scaled[i / 3][i % 3] = matrix[i / 3][i % 3] / scale;
            if (!(Math.abs(scaled[i / 3][i % 3]) <= 1)) {
                return "a product is larger than the moments";
            }
        }
        double[] principal = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(scaled)).getEigenvalues();
        Arrays.sort(principal);
        if (principal[0] <= 0) {
            return "it is not positive definite";
        }
        return principal[2] > (principal[0] + principal[1]) * (1 + ROUNDING)
            ? "its largest principal moment is above the sum of the other two" : "";
    }
}
