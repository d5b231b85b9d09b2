package quietband.identification;

/** Kinds of damping a spring or the platform may have. */
public enum Damping {
    VISCOUS("viscous"), LOSS("loss factor"), RELAXATION("relaxation"), MODAL("modal"), AS_FREED("as freed");

    private final String words;

    Damping(String words) {
        this.words = words;
    }

    /** As a person says it. */
    public String words() {
        return words;
    }
}
