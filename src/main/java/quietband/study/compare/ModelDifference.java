package quietband.study.compare;

import java.util.Optional;
import quietband.units.Dimension;

/**
 * Something that two models have differently.
 *
 * @param of     path
 * @param first  what the first has
 * @param second what the second has
 */
public record ModelDifference(String of, Value first, Value second) {

    /**
     * What a model has: words, or a number in base units.
     *
     * @param words     empty for a number
     * @param number    NaN for words
     * @param dimension of the number; empty for words
     */
    public record Value(String words, double number, Optional<Dimension> dimension) {

        static Value words(String words) {
            return new Value(words, Double.NaN, Optional.empty());
        }
    }
}
