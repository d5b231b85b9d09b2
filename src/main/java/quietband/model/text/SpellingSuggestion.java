package quietband.model.text;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known word that a misspelt one was probably meant to be. */
public final class SpellingSuggestion {

    private SpellingSuggestion() { }

    /** "did you mean 'stiffness'?", the name of now for a former one, or the given other advice when nothing is near. */
    public static String advice(String word, Collection<String> known, String otherwise) {
        Optional<String> now = FormerNames.now(word, known);
        if (now.isPresent()) {
            return "it is called '" + now.get() + "' now";
        }
        String best = null;
        int least = Math.max(1, Math.min(3, word.length() / 3)) + 1;
        for (String candidate : known) {
            int distance = Math.abs(candidate.length() - word.length()) >= least ? least
                : distance(plain(word), plain(candidate));
            if (distance < least && (distance == 0 || word.length() > 2)) {
                least = distance;
                best = candidate;
            }
        }
        return best == null ? otherwise : "did you mean '" + best + "'?";
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    /** Edits (insert, delete, replace, swap neighbours) from one word to another. */
    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int same = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + same);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
