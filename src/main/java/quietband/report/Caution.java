package quietband.report;

/** The texts that stand wherever a result could be mistaken for a test, or a test could hurt. */
public final class Caution {

    /** One line for summaries. */
    public static final String PREDICTION = "Prediction from a model, no test result.";

    /** The caution of every report, test plan and window. */
    public static final String TEXT = "This is a prediction from a model, no test and no qualification. Shaker and shock tests, sprung "
        + "masses and preloaded springs can injure: start at low level, secure fixture and loose mass, expect "
        + "amplification at the resonances listed, keep clear. Follow local rules; flight and vehicle use needs qualified "
        + "review.";

    private Caution() { }
}
