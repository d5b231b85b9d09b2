package quietband.identification.doubt;

/** Kinds of damping a spring or the platform may have. */
public enum DampingKind {
    VISCOUS("viscous"), LOSS("loss factor"), RELAXATION("relaxation"), MODAL("modal"), AS_FREED("as freed");

    private final String words;

    DampingKind(String words) {
        this.words = words;
    }

    /** As a person says it. */
    public String words() {
        return words;
    }
}
