package quietband.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import quietband.model.Design;
import quietband.report.file.QuantityText;
import quietband.study.assess.ExpectedResonances;

/** The texts that stand wherever a result could be mistaken for a test, or a test could hurt. */
public final class Caution {

    /** What a result from a model is. */
    public static final String PREDICTION = "Prediction from a model: neither a test result nor a qualification.";

    /** What a result from readings is. */
    public static final String READINGS = "Evaluated from readings: no qualification.";

    /** What can hurt where a unit is shaken, shocked or handled. */
    public static final String HANDLING = "Shaker and shock tests, sprung masses and preloaded springs can injure: start at low level, "
        + "secure fixture and loose mass, expect amplification at the resonances listed, keep clear. Follow local rules; flight and "
        + "vehicle use needs qualified review.";

    /** The caution of every report on a model, test plan and window. */
    public static final String TEXT = PREDICTION + " " + HANDLING;

    private Caution() { }

    /** What a model assumes, as far as it does. */
    public static String assumptions(Design design) {
        List<String> made = new ArrayList<>(List.of("no rotation of the housing"));
        design.platform().ifPresent(p -> {
            made.addAll(List.of("a rigid plate", "small angles", "gravity tilt left out"));
            if (design.cancellation().isPresent()) {
                made.add("sensors and cables do not load the platform (a cable is one more off-centre spring)");
            }
            if (p.springs().stream().anyMatch(s -> s.mass() > 0)) {
                made.add("lateral waves of coils approximated by the elastic line");
            }
        });
        if (design.vibration().random().stream().anyMatch(Optional::isPresent)) {
            made.add("vibration of the axes uncorrelated");
        }
        return "Assumed: " + String.join("; ", made) + ".";
    }

    /** The caution of a page, paragraph by paragraph. */
    static List<String> paragraphs(String basis, List<Double> resonancesHz) {
        List<String> said = new ArrayList<>(List.of("Caution. " + basis + " " + HANDLING));
        said.add(resonancesHz.isEmpty() ? "No resonance within the band by the model." : "Resonances within the band by the model: "
            + resonancesHz.stream().map(QuantityText::hz).distinct().collect(Collectors.joining(", ")) + ".");
        return said;
    }

    /** The caution of a page on a design. */
    public static List<String> paragraphs(Design design) {
        return paragraphs(PREDICTION, ExpectedResonances.of(design));
    }
}
