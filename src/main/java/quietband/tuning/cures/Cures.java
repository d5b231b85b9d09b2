package quietband.tuning.cures;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import quietband.demand.ResidualDemand;
import quietband.demand.ResidualPoint;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.model.Vec;
import quietband.response.Cause;
import quietband.platform.Assembly;
import quietband.response.ResidualResponse;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;

/** Finds for every gap of every stack its leading cause and what would just close it. */
public final class Cures {

    private static final String SENSITIVITY = "sensitivity";
    private static final int MOST_GAPS = 20;
    // a residual that crosses its limit so often turns with a delay: no change of one stretch helps, and each costs a whole assessment
    private static final int TOO_MANY = 200;
    private static final int PAIRS = 12;
    private static final int OTHERS = 3;

    private final Assessment assessment;
    private final Design design;
    private final ResidualDemand demand;
    private final Assembly assembly;
    private final ResidualResponse response;
    private final Remedies remedies;

    private Cures(Assessment assessment, Assembly assembly) {
        this.assessment = assessment;
        this.design = assessment.design();
        this.demand = new ResidualDemand(design);
        this.assembly = assembly;
        this.response = new ResidualResponse(design, assembly);
        this.remedies = new Remedies(design);
    }

    /** Every gap, stack by stack with the fullest first; none when no residual limit is stated. */
    public static List<CoverageGap> of(Assessment assessment) {
        return parts(assessment, assessment.design().platform().map(Assembly::new).orElse(null)).stream().map(Supplier::get)
            .flatMap(List::stream).toList();
    }

    /**
     * The same as a search for each stack, the fullest first.
     *
     * @param assembly the design's matrices; null when it has no platform
     */
    public static List<Supplier<List<CoverageGap>>> parts(Assessment assessment, Assembly assembly) {
        List<StackVerdict> verdicts = new ArrayList<>(assessment.verdicts());
        Collections.reverse(verdicts);
        return verdicts.stream().<Supplier<List<CoverageGap>>>map(v -> () -> new Cures(assessment, assembly).gaps(v)).toList();
    }

    private List<CoverageGap> gaps(StackVerdict verdict) {
        List<CoverageGap> gaps = new ArrayList<>();
        List<double[]> edges = verdict.gaps();
        for (int i : widest(edges)) {
            double from = edges.get(i)[0];
            double to = edges.get(i)[1];
            // the stretch a cure answers for: the gap and half of what is covered beside it
            double low = i == 0 ? design.requirement().fromHz() : Math.sqrt(edges.get(i - 1)[1] * from);
            double high = i == edges.size() - 1 ? design.requirement().toHz() : Math.sqrt(to * edges.get(i + 1)[0]);
            gaps.add(gap(verdict.stack(), from, to, low, high));
        }
        return gaps;
    }

    /** The numbers of the widest gaps, rising; of all when they are few, of none when they are hundreds. */
    private static int[] widest(List<double[]> edges) {
        return IntStream.range(0, edges.size()).boxed().sorted(Comparator.comparingDouble(i -> edges.get(i)[0] / edges.get(i)[1]))
            .limit(edges.size() > TOO_MANY ? 0 : MOST_GAPS).mapToInt(Integer::intValue).sorted().toArray();
    }

    /** Which stacks have more gaps than are searched for causes and cures, in sentences. */
    public static List<String> notSearched(Assessment assessment) {
        return assessment.verdicts().stream().filter(v -> v.gaps().size() > MOST_GAPS).map(v -> v.stack().key() + ": " + v.gaps().size()
            + " gaps in the coverage, " + (v.gaps().size() > TOO_MANY ? "too many to search for causes and cures"
            : "of which only the " + MOST_GAPS + " widest are searched for a cause and a cure") + "; all of them stand in summary.json")
            .toList();
    }

    private CoverageGap gap(Stack stack, double from, double to, double low, double high) {
        ResidualPoint worst = worst(stack, from, to);
        CureSearch search = new CureSearch(new GapMargin(design, assembly, stack, low, high, worst.frequencyHz()),
            stack == assessment.fullest());
        double amplification = stack.sprung()
            ? magnitude(Stack.ISOLATED, Cause.ALL, worst) / magnitude(Stack.BARE, Cause.ALL, worst) : 1;
        List<Lead> leads = leads(stack, worst, amplification);
        Lead lead = leads.get(0);
        Optional<Cure> single = first(search, lead.remedies());
        Optional<Cure> together = single.isPresent() ? Optional.empty() : together(search, leads);
        boolean full = stack == assessment.fullest();
        int wanted = full ? OTHERS : single.isEmpty() && together.isEmpty() ? 1 : 0;
        List<Cure> others = others(search, leads, lead, wanted);
        return new CoverageGap(stack, from, to, worst, amplification, lead.key(), lead.words(), lead.withoutPerG(), single, together,
            others);
    }

    /** A cause with what is left without it and what can be done about it. */
    private record Lead(String key, String words, double withoutPerG, List<Remedy> remedies) { }

    /** The causes, the one that lowers the residual at the worst point most when made ideal first. */
    private List<Lead> leads(Stack stack, ResidualPoint worst, double amplification) {
        List<Lead> leads = new ArrayList<>();
        if (stack.corrected()) {
            for (Cause cause : Cause.values()) {
                Set<Cause> others = EnumSet.complementOf(EnumSet.of(cause));
                leads.add(new Lead(cause.key(), words(cause), magnitude(stack, others, worst),
                    byEffect(remedies.of(cause), stack, worst)));
            }
            leads.sort(Comparator.comparingDouble(Lead::withoutPerG));
        }
        if (stack.sprung()) {
            leads.addAll(platform(stack, worst, amplification));
        }
        leads.add(new Lead(SENSITIVITY, "the resonator's sensitivity", 0, List.of(remedies.sensitivity(stack))));
        return leads;
    }

    private List<Lead> platform(Stack stack, ResidualPoint worst, double amplification) {
        List<Remedy> damping = byEffect(remedies.damping(), stack, worst);
        if (!stack.corrected()) {
            List<Remedy> both = new ArrayList<>(damping);
            both.addAll(remedies.softer());
            return List.of(new Lead("platform", amplification > 1 ? "the platform amplifies at its own resonance"
                : "the platform does not isolate this low", Double.NaN, both));
        }
        return List.of(new Lead("platform_damping", "amplification by the platform", Double.NaN, damping),
            new Lead(Remedies.STIFFNESS, "springs too soft", Double.NaN, remedies.stiffer()));
    }

    private List<Remedy> byEffect(List<Remedy> parts, Stack stack, ResidualPoint worst) {
        Comparator<Remedy> simpleFirst = Comparator.comparing(r -> r.key().equals(Cause.PATH.key()));
        return parts.stream().sorted(simpleFirst.thenComparingDouble(r -> new GapMargin.Over(r.at(1), stack)
            .at(worst.frequencyHz()))).toList();
    }

    private static String words(Cause cause) {
        return switch (cause) {
            case GAIN -> "gain error of the cancellation";
            case PHASE -> "phase error of the cancellation";
            case DELAY -> "delay error of the cancellation";
            case PATH -> "lag and gain of the cancellation's path";
            case CROSS_AXIS -> "cross-axis reading of the sensors";
            case SENSOR_PLACE -> "place of the sensor";
            case SUPPORT_RESONANCE -> "resonance of the resonator's support";
            case WEIGHTS -> "weights of the cancellation";
        };
    }

    private static Optional<Cure> first(CureSearch search, List<Remedy> candidates) {
        return candidates.stream().map(search::cure).flatMap(Optional::stream).findFirst();
    }

    /** Two together that close the gap, one of them of the leading cause. */
    private Optional<Cure> together(CureSearch search, List<Lead> leads) {
        // what moves most goes first: the whole path before its parts
        List<Remedy> own = leads.get(0).remedies();
        List<Remedy> pairs = new ArrayList<>();
        for (int i = own.size() - 1; i >= 0; i--) {
            for (int k = 0; k < leads.size(); k++) {
                // of the leading cause those that have not been paired yet
                List<Remedy> others = k == 0 ? own.subList(0, i) : leads.get(k).remedies();
                if (!leads.get(k).key().equals(SENSITIVITY)) {
                    for (Remedy b : others) {
                        pairs.add(own.get(i).with(b));
                    }
                }
            }
        }
        return pairs.stream().limit(PAIRS).map(search::cure).flatMap(Optional::stream).findFirst();
    }

    private static List<Cure> others(CureSearch search, List<Lead> leads, Lead lead, int wanted) {
        List<Cure> others = new ArrayList<>();
        for (Lead other : leads) {
            if (!other.key().equals(lead.key()) && others.size() < wanted) {
                first(search, other.remedies()).ifPresent(others::add);
            }
        }
        return others;
    }

    private ResidualPoint worst(Stack stack, double from, double to) {
        double at = new GapMargin(design, assembly, stack, from, to, from).top(design).frequencyHz();
        response.at(at);
        return demand.worst(at, response.squares(stack));
    }

    private double magnitude(Stack stack, Set<Cause> causes, ResidualPoint worst) {
        response.at(worst.frequencyHz());
        double[] y = response.magnitudes(stack, causes);
        Axis axis = Axis.of(worst.axis());
        return axis == null ? Vec.of(y).length() : y[axis.ordinal()];
    }
}
