package quietband.tolerance.judge;

import java.util.Arrays;
import java.util.List;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.platform.BodyExtent;
import quietband.platform.PointMotion;
import quietband.tolerance.kernel.ComplexArrays;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitPlatformSolver;
import quietband.tolerance.kernel.UnitResponse;
import quietband.units.StandardGravity;

/**
 * What a unit's sensors, cancellation and points of the platform do on a block, and their mean squares summed up over
 * frequency. One object serves one thread.
 */
final class MotionAt {

    private static final int ROWS = 4;

    /** Sensors 0 to 2 and the cancellation, row by row a drive each: complex amplitude per unit acceleration. */
    private final double[][] re = new double[ROWS * 3][UnitPlatformSolver.BLOCK];
    private final double[][] im = new double[ROWS * 3][UnitPlatformSolver.BLOCK];
    private final double[] meanSquare = new double[ROWS * 3];
    private final double[] tonePeak = new double[ROWS * 3];
    private double[][] pointSquare = new double[0][];
    private double[][] levers = new double[0][];
    private UnitResponse response;
    private boolean sprung;

    /** Starts a unit. */
    void clear(Design unit) {
        Arrays.fill(meanSquare, 0);
        Arrays.fill(tonePeak, 0);
        sprung = unit.platform().isPresent();
        boolean travels = sprung && unit.platform().get().clearance().isPresent();
        List<Vec> points = travels ? BodyExtent.points(unit.platform().get()) : List.of();
        levers = points.stream().map(p -> PointMotion.of(p.minus(unit.platform().get().centreOfGravity()))).toArray(double[][]::new);
        pointSquare = new double[points.size()][9];
    }

    /** Works out a block. */
    void take(Design unit, UnitResponse unitResponse, FrequencyBlock b) {
        response = unitResponse;
        if (sprung) {
            response.motion(b);
        } else {
            response.path.at(b);
        }
        boolean corrected = unit.cancellation().isPresent() && Stack.fullest(unit).corrected();
        if (corrected) {
            sensed(unit.cancellation().orElseThrow(), b);
        }
    }

    /** (B(p) A e_j)_i at a point from the centre of gravity: delta + w^2 (B(p) x_j)_i. */
    private void acceleration(Vec p, int i, int j, FrequencyBlock b, double[] outRe, double[] outIm) {
        double[] lever = PointMotion.of(p);
        ComplexArrays.fill(outRe, outIm, 0, 0, b.n);
        if (sprung) {
            for (int c = 0; c < 6; c++) {
                double l = lever[6 * i + c];
                if (l != 0) {
                    ComplexArrays.addScaled(outRe, outIm, l, response.coordinateRe(j, c), response.coordinateIm(j, c), b.n);
                }
            }
            for (int t = 0; t < b.n; t++) {
                outRe[t] *= b.w2[t];
                outIm[t] *= b.w2[t];
            }
        }
        if (i == j) {
            for (int t = 0; t < b.n; t++) {
                outRe[t] += 1;
            }
        }
    }

    private void sensed(Cancellation c, FrequencyBlock b) {
        double[][] ar = new double[9][b.n];
        double[][] ai = new double[9][b.n];
        boolean moves = response.sensorSprung();
        for (int k = 0; k < 3; k++) {
            for (int j = 0; j < 3; j++) {
                if (moves) {
                    acceleration(response.sensorFromCentre(), k, j, b, ar[3 * k + j], ai[3 * k + j]);
                } else {
                    ComplexArrays.fill(ar[3 * k + j], ai[3 * k + j], k == j ? 1 : 0, 0, b.n);
                }
            }
        }
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                ComplexArrays.fill(re[3 * i + j], im[3 * i + j], 0, 0, b.n);
                for (int k = 0; k < 3; k++) {
                    ComplexArrays.addScaled(re[3 * i + j], im[3 * i + j], c.sensor().crossAxis().get(3 * i + k), ar[3 * k + j],
                        ai[3 * k + j], b.n);
                }
            }
        }
        for (int j = 0; j < 3; j++) {
            ComplexArrays.fill(re[9 + j], im[9 + j], 0, 0, b.n);
            for (int i = 0; i < 3; i++) {
                ComplexArrays.addProduct(re[9 + j], im[9 + j], response.path.pr[i], response.path.pi[i], re[3 * i + j], im[3 * i + j], b.n);
            }
        }
    }

    /** Adds a drive at a frequency of the block to all mean squares; weight in g^2. */
    void add(int t, int j, double weight) {
        if (weight == 0) {
            return;
        }
        for (int row = 0; row < ROWS; row++) {
            int e = 3 * row + j;
            meanSquare[e] += weight * (re[e][t] * re[e][t] + im[e][t] * im[e][t]);
        }
        for (int p = 0; p < levers.length; p++) {
            for (int i = 0; i < 3; i++) {
                pointSquare[p][3 * i + j] += weight * displacement2(levers[p], i, j, t);
            }
        }
    }

    private double displacement2(double[] lever, int i, int j, int t) {
        double x = 0;
        double y = 0;
        for (int c = 0; c < 6; c++) {
            double l = lever[6 * i + c];
            if (l != 0) {
                x += l * response.coordinateRe(j, c)[t];
                y += l * response.coordinateIm(j, c)[t];
            }
        }
        return x * x + y * y;
    }

    /** Adds a tone's peaks. */
    void addTone(int t, int j, double peakG) {
        for (int row = 0; row < ROWS; row++) {
            int e = 3 * row + j;
            tonePeak[e] += peakG * Math.hypot(re[e][t], im[e][t]);
        }
    }

    /** Three standard deviations and the tones' peaks of a sensor (g) or the cancellation (fractional frequency). */
    double swing(Design unit, int row) {
        double most = 0;
        double square = 0;
        double peaks = 0;
        for (int j = 0; j < 3; j++) {
            most = Math.max(most, 3 * Math.sqrt(meanSquare[3 * row + j]) + tonePeak[3 * row + j]);
            square += meanSquare[3 * row + j];
            peaks += tonePeak[3 * row + j];
        }
        return unit.vibration().together() ? 3 * Math.sqrt(square) + peaks : most;
    }

    /** Three standard deviations of the travel along an axis, largest over the points, m. */
    double random3Sigma(Design unit, int i) {
        double most = 0;
        for (double[] p : pointSquare) {
            double sum = p[3 * i] + p[3 * i + 1] + p[3 * i + 2];
            double one = Math.max(p[3 * i], Math.max(p[3 * i + 1], p[3 * i + 2]));
            most = Math.max(most, unit.vibration().together() ? sum : one);
        }
        return 3 * Math.sqrt(most) * StandardGravity.M_PER_S2;
    }
}
