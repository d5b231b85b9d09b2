package quietband.window;

import quietband.window.bench.ModelSection;

/** Whose work is at hand: decides which values and which cards stand beside the band. */
enum Role {
    PLATFORM("Platform", ModelSection.PLATFORM),
    CANCELLATION("Cancellation", ModelSection.CANCELLATION),
    TOLERANCE("Tolerance", ModelSection.TOLERANCES);

    private final String title;
    private final ModelSection section;

    Role(String title, ModelSection section) {
        this.title = title;
        this.section = section;
    }

    String title() {
        return title;
    }

    /** The values that are turned first. */
    ModelSection section() {
        return section;
    }
}
