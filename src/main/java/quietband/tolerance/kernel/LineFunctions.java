package quietband.tolerance.kernel;

import org.hipparchus.complex.Complex;

/**
 * phi(u) = b cot b and chi(u) = tan(b/2)/b, u = b^2, with their scaled derivatives u^p f^(p)/p!, on a block of frequencies.
 * <pre>
 *   phi = 1 - 2 u sum_n 1/(n^2 pi^2 - u)        chi = 4 sum over odd n of 1/(n^2 pi^2 - u)
 * </pre>
 * The first two poles are taken as they are, the rest as a power series, good up to |u| = 2.2 pi^2; beyond it both come from
 * sine and cosine. From phi' = (phi - phi^2 - u)/(2u) and chi' = (1 + u chi^2 - 2 chi)/(4u) follow all others.
 */
final class LineFunctions {

    /** Largest |u| of the series. */
    static final double FARTHEST = 2.2 * Math.PI * Math.PI;

    private static final int TERMS = 12;
    private static final double[] REST = new double[TERMS];
    private static final double[] ODD_REST = new double[TERMS];

    static {
        // the small ones first
        for (int n = 4000; n >= 3; n--) {
            double each = 1 / (n * Math.PI * (n * Math.PI));
            double term = each;
            for (int k = 0; k < TERMS; k++) {
                REST[k] += term;
                ODD_REST[k] += n % 2 == 1 ? term : 0;
                term *= each;
            }
        }
        // what is left of sum 1/(n^2 pi^2) beyond n = 4000
        REST[0] += 1 / (4000.5 * Math.PI * Math.PI);
        ODD_REST[0] += 0.5 / (4000 * Math.PI * Math.PI);
    }

    final double[][] phiRe;
    final double[][] phiIm;
    final double[][] chiRe;
    final double[][] chiIm;
    private final double[] ur;
    private final double[] ui;
    private final double[] pr;
    private final double[] pi;
    private final double[] qr;
    private final double[] qi;

    /**
     * Room for some functions.
     *
     * @param orders with how many derivatives, the functions themselves counted
     * @param most   how many frequencies
     */
    LineFunctions(int orders, int most) {
        phiRe = new double[orders][most];
        phiIm = new double[orders][most];
        chiRe = new double[orders][most];
        chiIm = new double[orders][most];
        ur = new double[most];
        ui = new double[most];
        pr = new double[most];
        pi = new double[most];
        qr = new double[most];
        qi = new double[most];
    }

    /** Works out a family on a block: as many orders as asked for. */
    void at(LineFamily family, double[] w2, double top, int orders, int n) {
        for (int t = 0; t < n; t++) {
            ur[t] = w2[t] * family.alphaRe;
            ui[t] = w2[t] * family.alphaIm;
        }
        if (family.size(top) < FARTHEST) {
            series(terms(family.size(top)), n);
        } else {
            exact(n);
        }
        if (orders > 1) {
            derivatives(orders, n);
        }
    }

    /** How many terms of the rest, a series in |u|/(9 pi^2), count to 1e-11. */
    private static int terms(double size) {
        double step = size / (9 * Math.PI * Math.PI);
        int terms = 1;
        for (double left = step; left > 1e-11 && terms < TERMS; left *= step) {
            terms++;
        }
        return terms;
    }

    private void series(int terms, int n) {
        double[] cr = phiRe[0];
        double[] ci = phiIm[0];
        double[] tr = chiRe[0];
        double[] ti = chiIm[0];
        ComplexArrays.fill(cr, ci, REST[terms - 1], 0, n);
        ComplexArrays.fill(tr, ti, ODD_REST[terms - 1], 0, n);
        for (int k = terms - 2; k >= 0; k--) {
            ComplexArrays.horner(cr, ci, ur, ui, REST[k], n);
            ComplexArrays.horner(tr, ti, ur, ui, ODD_REST[k], n);
        }
        pole(1, n);
        ComplexArrays.addScaled(cr, ci, 1, pr, pi, n);
        ComplexArrays.addScaled(tr, ti, 1, pr, pi, n);
        pole(2, n);
        ComplexArrays.addScaled(cr, ci, 1, pr, pi, n);
        ComplexArrays.product(cr, ci, cr, ci, ur, ui, n);
        for (int t = 0; t < n; t++) {
            cr[t] = 1 - 2 * cr[t];
            ci[t] = -2 * ci[t];
        }
        for (int t = 0; t < n; t++) {
            tr[t] *= 4;
            ti[t] *= 4;
        }
    }

    /** p = 1/(k^2 pi^2 - u). */
    private void pole(int k, int n) {
        double place = k * k * Math.PI * Math.PI;
        for (int t = 0; t < n; t++) {
            qr[t] = place - ur[t];
            qi[t] = -ui[t];
        }
        ComplexArrays.reciprocal(pr, pi, qr, qi, n);
    }

    private void exact(int n) {
        for (int t = 0; t < n; t++) {
            Complex b = new Complex(ur[t], ui[t]).sqrt();
            boolean lost = Math.abs(b.getImaginary()) > 300;
            Complex limit = new Complex(0, b.getImaginary() > 0 ? -1 : 1);
            Complex cot = lost ? limit : b.cos().divide(b.sin());
            Complex half = lost ? limit.negate() : halfTangent(b);
            Complex phi = b.multiply(cot);
            Complex chi = half.divide(b);
            phiRe[0][t] = phi.getReal();
            phiIm[0][t] = phi.getImaginary();
            chiRe[0][t] = chi.getReal();
            chiIm[0][t] = chi.getImaginary();
        }
    }

    private static Complex halfTangent(Complex b) {
        Complex cos = b.cos();
        return cos.getReal() > 0 ? b.sin().divide(cos.add(1)) : cos.negate().add(1).divide(b.sin());
    }

    /** a_p = u^p phi^(p) and b_p = u^p chi^(p), each over p! in the end. */
    private void derivatives(int orders, int n) {
        for (int t = 0; t < n; t++) {
            double cr = phiRe[0][t];
            double ci = phiIm[0][t];
            // a1 = (c - c^2 - u)/2
            phiRe[1][t] = (cr - (cr * cr - ci * ci) - ur[t]) / 2;
            phiIm[1][t] = (ci - 2 * cr * ci - ui[t]) / 2;
        }
        ComplexArrays.product(qr, qi, ur, ui, chiRe[0], chiIm[0], n);
        ComplexArrays.product(pr, pi, qr, qi, chiRe[0], chiIm[0], n);
        for (int t = 0; t < n; t++) {
            // b1 = (1 + u x^2 - 2x)/4
            chiRe[1][t] = (1 + pr[t] - 2 * chiRe[0][t]) / 4;
            chiIm[1][t] = (pi[t] - 2 * chiIm[0][t]) / 4;
        }
        // Leibniz on 2 u c' = c - c^2 - u gives, with A_p = a_p/p!, 2p A_p = (3 - 2p) A_(p-1) - sum A_q A_(p-1-q) - u [p = 2]
        for (int p = 2; p < orders; p++) {
            next(phiRe, phiIm, p, n);
        }
        for (int p = 2; p < orders; p++) {
            nextChi(p, n);
        }
    }

    private void next(double[][] re, double[][] im, int p, int n) {
        ComplexArrays.fill(pr, pi, 0, 0, n);
        for (int q = 0; q < p; q++) {
            ComplexArrays.subtractProduct(pr, pi, re[q], im[q], re[p - 1 - q], im[p - 1 - q], n);
        }
        double own = 3 - 2 * p;
        double scale = 1.0 / (2 * p);
        double u = p == 2 ? 1 : 0;
        for (int t = 0; t < n; t++) {
            re[p][t] = scale * (own * re[p - 1][t] + pr[t] - u * ur[t]);
            im[p][t] = scale * (own * im[p - 1][t] + pi[t] - u * ui[t]);
        }
    }

    /** 4p B_p = (2 - 4p) B_(p-1) + u (sum_(q<p) B_q B_(p-1-q) + sum_(q<p-1) B_q B_(p-2-q)). */
    private void nextChi(int p, int n) {
        ComplexArrays.fill(pr, pi, 0, 0, n);
        for (int q = 0; q < p; q++) {
            ComplexArrays.addProduct(pr, pi, chiRe[q], chiIm[q], chiRe[p - 1 - q], chiIm[p - 1 - q], n);
        }
        for (int q = 0; q < p - 1; q++) {
            ComplexArrays.addProduct(pr, pi, chiRe[q], chiIm[q], chiRe[p - 2 - q], chiIm[p - 2 - q], n);
        }
        ComplexArrays.product(pr, pi, pr, pi, ur, ui, n);
        double own = 2 - 4 * p;
        double scale = 1.0 / (4 * p);
        for (int t = 0; t < n; t++) {
            chiRe[p][t] = scale * (own * chiRe[p - 1][t] + pr[t]);
            chiIm[p][t] = scale * (own * chiIm[p - 1][t] + pi[t]);
        }
    }
}
