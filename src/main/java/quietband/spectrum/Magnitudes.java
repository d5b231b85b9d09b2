package quietband.spectrum;

/** Magnitudes of complex numbers whose parts lie in arrays of their own. */
public final class Magnitudes {

    private Magnitudes() { }

    /** |z|^2 = re^2 + im^2 of the first n numbers; {@code into} is modified and may be one of the others. */
    public static void squared(double[] into, double[] re, double[] im, int n) {
        for (int i = 0; i < n; i++) {
            into[i] = re[i] * re[i] + im[i] * im[i];
        }
    }

    /** |z|^2 of each. */
    public static double[] squared(double[] re, double[] im) {
        double[] squares = new double[re.length];
        squared(squares, re, im, re.length);
        return squares;
    }

    /** |z| of each, without overflow on the way. */
    public static double[] of(double[] re, double[] im) {
        double[] sizes = new double[re.length];
        for (int i = 0; i < sizes.length; i++) {
            sizes[i] = StrictMath.hypot(re[i], im[i]);
        }
        return sizes;
    }
}
