package quietband.identification.search;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import quietband.identification.MeasuredResponse.Kind;
import quietband.identification.PredictedResponse;
import quietband.model.Design;
import quietband.model.Platform;
import quietband.model.Stack;
import quietband.model.quantity.Quantities;
import quietband.platform.SingularPlatformException;

/** What a design would show at every measured point while some of its numbers are varied. */
public final class ResponseEvaluator {

    private final Design design;
    private final FreeValues free;
    private final MeasuredPoints seen;
    private final List<Kind> kinds = new ArrayList<>();
    private final List<Stack> stacks = new ArrayList<>();
    private final int[] prediction;

    public ResponseEvaluator(Design design, FreeValues free, MeasuredPoints seen) {
        this.design = design;
        this.free = free;
        this.seen = seen;
        prediction = new int[seen.series().size()];
        for (int s = 0; s < prediction.length; s++) {
            Kind kind = seen.series().get(s).source().response().kind();
            Stack stack = kind == Kind.SENSITIVITY ? seen.series().get(s).source().stack() : Stack.BARE;
            int at = 0;
            while (at < kinds.size() && !(kinds.get(at) == kind && stacks.get(at) == stack)) {
                at++;
            }
            if (at == kinds.size()) {
                kinds.add(kind);
                stacks.add(stack);
            }
            prediction[s] = at;
        }
    }

    public MeasuredPoints seen() {
        return seen;
    }

    /** The same design and numbers on other measured points. */
    public ResponseEvaluator on(MeasuredPoints other) {
        return new ResponseEvaluator(design, free, other);
    }

    public FreeValues free() {
        return free;
    }

    /** The design with the free numbers set. */
    public Design design(double[] u) {
        return design.with(free.at(u));
    }

    /**
     * Predicts every point.
     *
     * @param re real parts, one per point; modified
     * @param im imaginary parts; modified
     * @return false where no such design can exist
     */
    public boolean predict(double[] u, double[] re, double[] im) {
        Quantities q = free.at(u);
        if (!free.within(q)) {
            return false;
        }
        try {
            Design d = design.with(q);
            if (d.platform().isPresent() && !solid(d.platform().get().inertia())) {
                return false;
            }
            PredictedResponse[] p = new PredictedResponse[kinds.size()];
            for (int i = 0; i < p.length; i++) {
                p[i] = new PredictedResponse(d, kinds.get(i), stacks.get(i));
            }
            double[] last = new double[p.length];
            for (int i = 0; i < re.length; i++) {
                int at = prediction[seen.of()[i]];
                if (last[at] != seen.frequency()[i]) {
                    last[at] = seen.frequency()[i];
                    p[at].at(last[at]);
                }
                int axis = seen.series().get(seen.of()[i]).axis().ordinal();
                re[i] = p[at].re(axis);
                im[i] = p[at].im(axis);
            }
            return true;
        } catch (SingularPlatformException | ArithmeticException | MathRuntimeException e) {
            return false;
        }
    }

    /** Whether a body can have such an inertia: J and trace(J)/2 - J both positive (the triangle inequality). */
    static boolean solid(Platform.Inertia j) {
        double half = (j.xx() + j.yy() + j.zz()) / 2 * (1 + 1e-9);
        return positive(j.xx(), j.yy(), j.zz(), -j.xy(), -j.xz(), -j.yz())
            && positive(half - j.xx(), half - j.yy(), half - j.zz(), j.xy(), j.xz(), j.yz());
    }

    private static boolean positive(double a, double b, double c, double ab, double ac, double bc) {
        return a > 0 && a * b - ab * ab > 0
            && a * (b * c - bc * bc) - ab * (ab * c - bc * ac) + ac * (ab * bc - b * ac) > 0;
    }
}
