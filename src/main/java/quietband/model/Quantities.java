package quietband.model;

/** Placeholder: see the model's brief. */
public final class Quantities { }
