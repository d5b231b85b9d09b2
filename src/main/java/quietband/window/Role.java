package quietband.window;

/** Whose work is at hand: decides which values and which cards stand beside the band. */
enum Role {
    PLATFORM("Platform", Section.PLATFORM),
    CORRECTION("Correction", Section.CORRECTION),
    TOLERANCE("Tolerance", Section.SCATTER);

    private final String title;
    private final Section section;

    Role(String title, Section section) {
        this.title = title;
        this.section = section;
    }

    String title() {
        return title;
    }

    /** The values that are turned first. */
    Section section() {
        return section;
    }
}
