package quietband.tolerance.judge;

import java.util.Arrays;
import quietband.model.Cancellation;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.platform.PointMotion;
import quietband.response.travel.RandomMotion;
import quietband.response.verdict.RangeUse;
import quietband.tolerance.kernel.ComplexArrays;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.tolerance.kernel.UnitPlatformSolver;
import quietband.tolerance.kernel.UnitResponse;

/**
 * What a unit's sensors, cancellation and points of the platform do on a block, and their mean squares summed up over
 * frequency. One object serves one thread.
 */
final class MotionAt {

    private static final int ROWS = 4;

    /** Sensors 0 to 2 and the cancellation, row by row a drive each: complex amplitude per unit acceleration. */
    private final double[][] re = new double[ROWS * 3][UnitPlatformSolver.BLOCK];
    private final double[][] im = new double[ROWS * 3][UnitPlatformSolver.BLOCK];
    private final double[] tonePeak = new double[ROWS * 3];
    private final double[] coordinateRe = new double[6];
    private final double[] coordinateIm = new double[6];
    private RandomMotion random;
    private UnitResponse response;
    private boolean sprung;
    private boolean travels;

    /** Starts a unit. */
    void clear(Design unit) {
        random = new RandomMotion(unit.vibration().together());
        Arrays.fill(tonePeak, 0);
        sprung = unit.platform().isPresent();
        travels = sprung && unit.platform().get().clearance().isPresent();
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
            random.swing(row, j, weight * (re[e][t] * re[e][t] + im[e][t] * im[e][t]));
        }
        if (travels) {
            for (int c = 0; c < 6; c++) {
                coordinateRe[c] = response.coordinateRe(j, c)[t];
                coordinateIm[c] = response.coordinateIm(j, c)[t];
            }
            random.move(j, weight, coordinateRe, coordinateIm);
        }
    }

    /** Adds a tone's peaks. */
    void addTone(int t, int j, double peakG) {
        for (int row = 0; row < ROWS; row++) {
            int e = 3 * row + j;
            tonePeak[e] += peakG * Math.hypot(re[e][t], im[e][t]);
        }
    }

    /** What the random vibration makes. */
    RandomMotion random() {
        return random;
    }

    /** How much of the ranges random vibration and tones use. */
    RangeUse ranges(Design unit) {
        return RangeUse.of(unit, random, tonePeak);
    }
}
