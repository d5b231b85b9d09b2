package quietband.report.compare;

/**
 * Something that two models have differently.
 *
 * @param of     path
 * @param first  what the first has, in words
 * @param second what the second has
 */
public record ModelDifference(String of, String first, String second) { }
