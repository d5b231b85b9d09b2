package quietband.response;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Platform.Spring;
import quietband.model.Vec;
import quietband.platform.Assembly;
import quietband.platform.Lever;
import quietband.spectrum.Quadrature;
import quietband.units.StandardGravity;

/**
 * How near a seated spring comes to going slack in the linear figures: its extension along its z (the platform moving to
 * +z after the turn) under the sustained acceleration and three standard deviations of the random one, over
 * preload/rate. At rest under gravity the preload stands.
 *
 * @param spring    which
 * @param extension in m
 * @param free      preload/rate, m
 */
record Slack(Spring spring, double extension, double free) {

    /** One entry per seated spring. */
    static List<Slack> of(Design design, Assembly assembly, ResidualResponse response) {
        List<Spring> seated = design.platform().orElseThrow().springs().stream().filter(Spring::seated).toList();
        if (seated.isEmpty()) {
            return List.of();
        }
        double[] random = random(design, assembly, response, seated);
        List<Slack> slack = new ArrayList<>();
        for (int s = 0; s < seated.size(); s++) {
            Spring spring = seated.get(s);
            double steady = 0;
            for (Axis axis : design.vibration().axes()) {
                double[] q = Travel.steadyMotion(assembly, Vec.ZERO.with(axis, design.vibration().sustainedG()));
                double[] row = row(assembly, spring);
                double u = 0;
                for (int c = 0; c < 6; c++) {
                    u += row[c] * q[c];
                }
                steady = Math.max(steady, Math.abs(u));
            }
            double free = spring.stiffness().z() > 0 ? spring.preload() / spring.stiffness().z() : Double.POSITIVE_INFINITY;
            slack.add(new Slack(spring, steady + 3 * random[s], free));
        }
        return slack;
    }

    private static double[] row(Assembly assembly, Spring spring) {
        double[] b = Lever.turned(assembly.fromCentre(spring.at()), spring.turn());
        double[] row = new double[6];
        System.arraycopy(b, 12, row, 0, 6);
        return row;
    }

    private static double[] random(Design design, Assembly assembly, ResidualResponse response, List<Spring> seated) {
        double[] sigma = new double[seated.size()];
        double[] grid = Travel.profileGrid(design, assembly);
        if (grid.length < 2) {
            return sigma;
        }
        PhaseNoise density = new PhaseNoise(design);
        double[] mean = Quadrature.integrate(grid, 3 * seated.size(), (f, into) -> {
            response.at(f);
            for (int s = 0; s < seated.size(); s++) {
                double[] row = row(assembly, seated.get(s));
                for (int j = 0; j < 3; j++) {
                    double re = 0;
                    double im = 0;
                    for (int c = 0; c < 6; c++) {
                        re += row[c] * response.motion().relativeRe(c, j);
                        im += row[c] * response.motion().relativeIm(c, j);
                    }
                    double g = StandardGravity.M_PER_S2;
                    into[3 * s + j] = (re * re + im * im) * g * g * density.density(Axis.ALL.get(j), f);
                }
            }
        });
        for (int s = 0; s < sigma.length; s++) {
            double power = design.vibration().together() ? mean[3 * s] + mean[3 * s + 1] + mean[3 * s + 2]
                : Math.max(mean[3 * s], Math.max(mean[3 * s + 1], mean[3 * s + 2]));
            sigma[s] = Math.sqrt(power);
        }
        return sigma;
    }

    /** The warning with the level at which the spring goes slack; empty text when it does not. */
    String warning() {
        if (extension <= free) {
            return "";
        }
        return String.format(Locale.ROOT, "seated spring %s goes slack at %.3g of the stated vibration (extension %.3g mm, "
            + "preload/rate %.3g mm): the linear figures do not show it", spring.label(), free / extension,
            extension * 1e3, free * 1e3);
    }
}
