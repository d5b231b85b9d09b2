package quietband.cancellation;

import org.hipparchus.complex.Complex;

/** A complex number that is multiplied in place: the product of a chain of elements without an object for each. */
final class ComplexProduct {

    private double re = 1;
    private double im;

    /** Real part. */
    double re() {
        return re;
    }

    /** Imaginary part. */
    double im() {
        return im;
    }

    /** The number as an object of its own. */
    Complex value() {
        return new Complex(re, im);
    }

    /** Becomes a given number. */
    ComplexProduct set(double real, double imaginary) {
        re = real;
        im = imaginary;
        return this;
    }

    /** Multiplies by real + j imaginary. */
    ComplexProduct times(double real, double imaginary) {
        double r = re * real - im * imaginary;
        im = re * imaginary + im * real;
        re = r;
        return this;
    }

    /** Divides by real + j imaginary, whose parts may be infinite but not both zero. */
    ComplexProduct over(double real, double imaginary) {
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
    ComplexProduct turn(double angle) {
        return angle == 0 ? this : times(StrictMath.cos(angle), StrictMath.sin(angle));
    }
}
