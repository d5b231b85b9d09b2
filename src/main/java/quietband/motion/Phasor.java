package quietband.motion;

/**
 * A sinusoid on the time grid, value and slope (per step) at point k being the real parts of the complex amplitudes times
 * exp(j theta k).
 */
record Phasor(double re, double im, double slopeRe, double slopeIm) {

    static final Phasor ZERO = new Phasor(0, 0, 0, 0);

    /** amplitude * cos(theta k). */
    static Phasor cosine(double amplitude, double theta) {
        return new Phasor(amplitude, 0, 0, theta * amplitude);
    }

    Phasor plus(Phasor o) {
        return new Phasor(re + o.re, im + o.im, slopeRe + o.slopeRe, slopeIm + o.slopeIm);
    }

    Phasor times(double f) {
        return new Phasor(f * re, f * im, f * slopeRe, f * slopeIm);
    }

    /** The real and imaginary amplitude of the cubic at a fraction s after point k = 0, and exp(j theta) per step. */
    double[] at(double s, double theta) {
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
