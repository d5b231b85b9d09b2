package quietband.motion.signal;

/**
 * A sinusoid on the time grid, value and slope (per step) at point k being the real parts of the complex amplitudes times
 * exp(j theta k).
 */
public record GridSinusoid(double re, double im, double slopeRe, double slopeIm) {

    public static final GridSinusoid ZERO = new GridSinusoid(0, 0, 0, 0);

    /** amplitude * cos(theta k). */
    public static GridSinusoid cosine(double amplitude, double theta) {
        return new GridSinusoid(amplitude, 0, 0, theta * amplitude);
    }

    public GridSinusoid plus(GridSinusoid o) {
        return new GridSinusoid(re + o.re, im + o.im, slopeRe + o.slopeRe, slopeIm + o.slopeIm);
    }

    public GridSinusoid times(double f) {
        return new GridSinusoid(f * re, f * im, f * slopeRe, f * slopeIm);
    }

    /** The real and imaginary amplitude of the cubic at a fraction s after point k = 0, and exp(j theta) per step. */
    public double[] at(double s, double theta) {
        double r = 1 - s;
        double c = Math.cos(theta);
        double q = Math.sin(theta);
        double h00 = r * r * (1 + 2 * s);
        double h01 = s * s * (3 - 2 * s);
        double h10 = s * r * r;
        double h11 = -s * s * r;
        return new double[] {
            h00 * re + h01 * (re * c - im * q) + h10 * slopeRe + h11 * (slopeRe * c - slopeIm * q),
            h00 * im + h01 * (im * c + re * q) + h10 * slopeIm + h11 * (slopeIm * c + slopeRe * q)};
    }
}
