package quietband.spectrum;

import org.hipparchus.complex.Complex;

/**
 * A complex number that is multiplied in place: the product of a chain of responses without an object for each. r is a frequency
 * over that of the corner or resonance; 0, for one at infinity, leaves the product as it is.
 */
public final class ComplexProduct {

    private double re = 1;
    private double im;

    /** Real part. */
    public double re() {
        return re;
    }

    /** Imaginary part. */
    public double im() {
        return im;
    }

    /** Square of the magnitude. */
    public double power() {
        return re * re + im * im;
    }

    /** The number as an object of its own. */
    public Complex value() {
        return new Complex(re, im);
    }

    /** Becomes a given number. */
    public ComplexProduct set(double real, double imaginary) {
        re = real;
        im = imaginary;
        return this;
    }

    /** Becomes another number. */
    public ComplexProduct set(ComplexProduct other) {
        return set(other.re, other.im);
    }

    /** Multiplies by real + j imaginary. */
    public ComplexProduct times(double real, double imaginary) {
        double r = re * real - im * imaginary;
        im = re * imaginary + im * real;
        re = r;
        return this;
    }

    /** Divides by real + j imaginary, whose parts may be infinite but not both zero. */
    public ComplexProduct over(double real, double imaginary) {
        if (Double.isInfinite(real) || Double.isInfinite(imaginary)) {
            return set(0, 0);
        }
        double size = real * real + imaginary * imaginary;
        double r = (re * real + im * imaginary) / size;
        im = (im * real - re * imaginary) / size;
        re = r;
        return this;
    }

    /** Multiplies by exp(j angle). */
    public ComplexProduct turn(double angle) {
        return angle == 0 ? this : times(StrictMath.cos(angle), StrictMath.sin(angle));
    }

    /** One pole, 1/(1 + j r): 3.01 dB down and 45 degrees late at the corner. */
    public ComplexProduct pole(double r) {
        return over(1, r);
    }

    /** A resonance, 1/(1 - r^2 + j r/Q): from the force on a mass on a damped spring to its displacement, 1 at rest, -j Q at r = 1. */
    public ComplexProduct resonance(double r, double q) {
        return over(1 - r * r, r / q);
    }

    /** (1 + j r/Q)/(1 - r^2 + j r/Q): from the motion of the support of a mass on a damped spring to that of the mass. */
    public ComplexProduct transmissibility(double r, double q) {
        double d = r / q;
        double a = 1 - r * r;
        double size = a * a + d * d;
        // divided last, as the quotient of real numbers: searches feel the last digit
        times(a + d * d, d * a - d);
        return set(re / size, im / size);
    }
}
