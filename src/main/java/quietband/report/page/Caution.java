package quietband.report.page;

/** The texts that stand wherever a result could be mistaken for a test, or a test could hurt. */
public final class Caution {

    /** One line for summaries. */
    public static final String PREDICTION = "Prediction from a model, no test result.";

    /** The caution of every report, test plan and window. */
    public static final String TEXT = "This is a prediction from a model, no test and no qualification. Shaker and shock tests, sprung "
        + "masses and preloaded springs can injure: start at low level, secure fixture and loose mass, expect "
        + "amplification at the resonances listed, keep clear. Follow local rules; flight and vehicle use needs qualified "
        + "review.";

    /** What the model leaves out. */
    public static final String ASSUMPTIONS = "Assumed: a rigid plate; small angles; no rotation of the housing; gravity tilt left out; "
        + "sensors and cables do not load the platform (a cable is one more off-centre spring); vibration of the axes "
        + "uncorrelated; lateral waves of coils approximated by the elastic line.";

    private Caution() { }
}
