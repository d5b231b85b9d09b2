package quietband.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** What happens to files: cells overwritten, lines lost, doubled or swapped, other separators, cut copies, flipped bytes. */
final class Damage {

    private static final String[] CELLS = {"nan", "NaN", "inf", "-inf", "Infinity", "1e308", "-1e308", "1e-308", "1e400", "-1", "0", "-0",
        "", " ", "1,5", "1.5 N/mm", "12 kg", "88 Hz", "3 parsec", "99999999999999999999", "1e15", "0x10", "1f", "1d", "1_000", "٣", "−1",
        "x", "z", "tap", "section", "yes", "null", "~", "true", "=1+1", "@a", "\"", "'", "\"\"", "#", "a\"b", "{}", "[]", "*a", "&a 1",
        "!!int 1", "%", "%s %d", "\\u0000", "{x: 1}", "1 ppb/g", "x_ratio", "time_s", "platform", "../..", "/", "models", "1e-400", "2e9"};
    private static final String[] TOKENS = {"{", "}", "[", "]", ": ", ", ", "- ", "\n", "  ", "\t", "&a ", "*a", "!!x ", "null", "~", "9",
        "-", "1e400", ".nan", "0", "#", "'", "\"", "|", ">", "%", "\u0000", "\ufeff", "\ud83d\ude00", "---\n", "...\n", "<<: ", "? ", "x",
        "platform.mass", "g", " N/m", "\r\n", "\u0085", "\u2028", ";", "\u001b[31m", "\u0007"};

    private final Random random;

    Damage(Random random) {
        this.random = random;
    }

    /** The bytes of a file after one accident or a few. */
    byte[] of(String text) {
        String now = text;
        for (int i = random.nextInt(4) == 0 ? 1 + random.nextInt(3) : 1; i > 0 && !now.isEmpty(); i--) {
            now = once(now);
        }
        byte[] bytes = now.getBytes(StandardCharsets.UTF_8);
        return random.nextInt(12) == 0 ? flipped(bytes) : bytes;
    }

    private String once(String text) {
        return switch (random.nextInt(20)) {
            case 0 -> text.substring(0, random.nextInt(text.length()));
            case 1 -> "\ufeff" + text;
            case 2 -> text.replace("\n", random.nextBoolean() ? "\r" : "\r\n");
            case 3 -> text.replace(',', random.nextBoolean() ? ';' : '\t');
            case 4, 5, 6 -> lines(text);
            case 7 -> inserted(text, "x".repeat(1 + random.nextInt(200_000)));
            case 8 -> inserted(text, "[{- (".charAt(random.nextInt(5)) + "a: [".repeat(random.nextInt(300)));
            case 9 -> inserted(text, TOKENS[random.nextInt(TOKENS.length)]);
            case 10 -> replaced(text, TOKENS[random.nextInt(TOKENS.length)]);
            case 11 -> text.replaceAll("(\\d)\\.(\\d)", "$1,$2");
            default -> cell(text);
        };
    }

    private String inserted(String text, String what) {
        int at = random.nextInt(text.length() + 1);
        return text.substring(0, at) + what + text.substring(at);
    }

    private String replaced(String text, String what) {
        int at = random.nextInt(text.length());
        int end = Math.min(text.length(), at + 1 + random.nextInt(random.nextInt(4) == 0 ? 60 : 3));
        return text.substring(0, at) + what + text.substring(end);
    }

    private String lines(String text) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
        int a = random.nextInt(lines.size());
        int b = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(a);
            case 1 -> lines.add(b, lines.get(a));
            case 2 -> Collections.swap(lines, a, b);
            default -> lines.subList(Math.min(a, b), Math.max(a, b)).clear();
        }
        return String.join("\n", lines);
    }

    /** One value, between separators of the file's own kind, becomes another. */
    private String cell(String text) {
        int at = random.nextInt(text.length());
        int from = at;
        while (from > 0 && !separates(text.charAt(from - 1))) {
            from--;
        }
        int to = at;
        while (to < text.length() && !separates(text.charAt(to))) {
            to++;
        }
        return text.substring(0, from) + CELLS[random.nextInt(CELLS.length)] + text.substring(to);
    }

    private static boolean separates(char c) {
        return ",\n:{}[]".indexOf(c) >= 0;
    }

    private byte[] flipped(byte[] bytes) {
        for (int i = bytes.length == 0 ? 0 : 1 + random.nextInt(3); i > 0; i--) {
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return bytes;
    }
}
