package quietband.model.edit;

import java.util.List;
import java.util.Optional;
import quietband.model.text.FlowText;
import quietband.units.Dimension;

/**
 * A value as it stands in a model file, or a key of a block that the file leaves out: what an editor shows as one field.
 *
 * @param path      as {@link ModelFile#withValue} takes it
 * @param block     path of the block or list entry it stands in
 * @param key       its own key
 * @param part      axis (or xy .. zy, or the key within an axis) where the key holds a map; else empty
 * @param text      as written, on one line; empty when left out
 * @param given     whether the file has it
 * @param words     the words that may stand there; empty where it is no choice
 * @param dimension of an amount; empty for anything else
 * @param free      whether any text may stand there
 * @param doc       the format's line about it
 * @param comment   the comment behind it in the file, without its mark; empty when there is none
 * @param example   what could stand there, on one line; a block or list that is left out is one such value
 */
public record FileValue(String path, String block, String key, String part, String text, boolean given,
                        List<String> words, Optional<Dimension> dimension, boolean free, String doc, String comment, String example) {

    public FileValue {
        words = List.copyOf(words);
    }

    /** What a person typed as a piece of YAML that means just that: free text is quoted where it must be. */
    public String yaml(String typed) {
        String line = typed.strip();
        boolean odd = line.isEmpty() || !line.matches("[\\p{L}\\p{N}.(/_][^:#,\\[\\]{}&*!|>'\"%@`]*") || line.endsWith(" ");
        return free && odd ? FlowText.quoted(line) : line;
    }

    /** Whether a text that was typed may stand on one line of a file without ending it or beginning a comment. */
    public static boolean oneLine(String typed) {
        return typed.chars().noneMatch(c -> c < ' ' || c == 0x85 || c == 0x2028 || c == 0x2029) && !typed.contains(" #")
            && !typed.startsWith("#");
    }
}
