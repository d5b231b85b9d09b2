package quietband.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One damaged file and the command line that reads it, in a folder of its own.
 *
 * @param seed   from which the case is made again
 * @param recipe what runs
 * @param folder with every file and, afterwards, the result
 */
record FuzzCase(int seed, Recipe recipe, Path folder) {

    /** What a run said. */
    record Said(int status, String out, String err) { }

    private static final Pattern CLASS_NAME = Pattern.compile("\\b[A-Z]\\w*(?:Exception|Error)\\b|"
        + "Optional\\[|\\bat quietband\\.|@[0-9a-f]{6,8}\\b");
    private static final Pattern BLOCK =
        Pattern.compile("\\b(?:platform|cancellation|oscillator|vibration|requirement|tolerances?)\\b");
    private static final Pattern LISTED = Pattern.compile("\"([^\"]+)\"");
    private static final Pattern PLACE = Pattern.compile(":\\d+|line \\d+|after time|column \\w+|axis [xyz]");
    /** What concerns a whole file and so has no line in it. */
    private static final Pattern WHOLE_FILE = Pattern.compile("is empty|not UTF-8|not text in UTF-8|not valid CSV|no usable row|"
        + "column .* (?:is missing|stands twice)|oscillator: is missing|"
        + "nested more than|there is no such file|has \\d+ samples?;|time_s|too little in common");

    /** Writes the files of a case. */
    static FuzzCase of(int seed, Path folder, Map<String, String> files) throws IOException {
        List<Recipe> recipes = Recipe.all();
        Recipe recipe = recipes.get(Math.floorMod(seed, recipes.size()));
        Files.createDirectories(folder);
        for (Map.Entry<String, String> file : files.entrySet()) {
            if (!recipe.reads(file.getKey())) {
                continue;
            }
            byte[] bytes = file.getValue().replace("HASH", hash(files.get("model.yaml"))).getBytes(StandardCharsets.UTF_8);
            if (file.getKey().equals(recipe.damaged())) {
                bytes = new Damage(new Random(seed)).of(new String(bytes, StandardCharsets.UTF_8));
            }
            Path target = folder.resolve(file.getKey().equals("summary.json") ? "tolerance/summary.json" : file.getKey());
            Files.createDirectories(target.getParent());
            Files.write(target, bytes);
        }
        return new FuzzCase(seed, recipe, folder);
    }

    private static String hash(String text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The words of the command line, files as paths. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        for (String word : recipe.args()) {
            boolean file = word.equals("OUT") || word.matches("[a-z-]+\\.(csv|yaml)");
            words.add(file ? folder.resolve(word).toString() : word);
        }
        return words;
    }

    /** What is wrong with a run; empty when nothing is. */
    List<String> faults(Said said) throws IOException {
        List<String> faults = new ArrayList<>();
        boolean check = recipe.args().contains("--check");
        if (said.status() != 0 && said.status() != 2 && !(said.status() == 1 && check)) {
            faults.add("status " + said.status());
        }
        // the file's own words may say anything
        String own = said.err().replaceAll("'[^'\n]*'", "''");
        Matcher name = CLASS_NAME.matcher(own + said.out());
        if (name.find()) {
            faults.add("says " + name.group());
        }
        if (said.status() == 2) {
            told(own, said, faults);
        }
        try (Stream<Path> inside = Files.list(folder)) {
            inside.filter(p -> p.getFileName().toString().startsWith(".")).forEach(p -> faults.add("leaves " + p.getFileName()));
        }
        result(said, faults);
        return faults;
    }

    /** Each message names a file or an option; in a file, a line or a key. */
    private void told(String own, Said said, List<String> faults) {
        String text = own.replace(folder.toString(), "");
        if (text.isBlank()) {
            faults.add("says nothing");
        }
        if (!said.out().isEmpty()) {
            faults.add("prints beside an error");
        }
        for (String line : text.lines()
            .map(String::strip).filter(l -> !l.startsWith("note: ") && !l.startsWith("Prediction from a model: ")).toList()) {
            boolean named = recipe.args().stream().filter(w -> w.startsWith("--") || w.contains(".")).anyMatch(line::contains)
                || line.contains(recipe.damaged()) || BLOCK.matcher(line).find();
            if (!named) {
                faults.add("names no file: " + line);
            }
            boolean inFile = line.matches("(?s)(quietband: )?/?" + Pattern.quote(recipe.damaged()) + ".*");
            if (inFile && !PLACE.matcher(line).find() && !WHOLE_FILE.matcher(line).find()) {
                faults.add("names no place: " + line);
            }
        }
    }

    /** A result is whole by its mark, or not there. */
    private void result(Said said, List<String> faults) throws IOException {
        Path target = folder.resolve("OUT");
        if (said.status() == 2 || said.status() >= 70) {
            if (Files.exists(target)) {
                faults.add("leaves a result");
            }
            return;
        }
        Path mark = target.resolve("quietband-result.json");
        if (!Files.isRegularFile(mark)) {
            faults.add("no mark");
            return;
        }
        String text = Files.readString(mark);
        Matcher listed = LISTED.matcher(text.substring(text.indexOf("\"files\""), text.indexOf(']')));
        listed.find();
        while (listed.find()) {
            if (!Files.isRegularFile(target.resolve(listed.group(1)))) {
                faults.add("lacks " + listed.group(1));
            }
        }
    }

    /** Removes the folder. */
    void remove() throws IOException {
        try (Stream<Path> all = Files.walk(folder, new FileVisitOption[0])) {
            for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(p);
            }
        }
    }
}
