package quietband.report.page;

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

    /** What the model leaves out. */
    public static final String ASSUMPTIONS = "Assumed: a rigid plate; small angles; no rotation of the housing; gravity tilt left out; "
        + "sensors and cables do not load the platform (a cable is one more off-centre spring); vibration of the axes "
        + "uncorrelated; lateral waves of coils approximated by the elastic line.";

    private Caution() { }
}
