package quietband;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import quietband.cli.Quietband;
import quietband.model.format.ModelSchema;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The pages say what is there: classes, links, options, command lines and keys are those of the program. */
class DocumentsTest {

    private static final Path PAGES = Path.of("src/site/markdown");
    private static final Pattern CLASS = Pattern.compile("\\bquietband(?:\\.[a-z]+)*\\.[A-Z]\\w*");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern SHELL = Pattern.compile("(?s)```sh\\n(.*?)```");
    private static final Pattern FENCED = Pattern.compile("(?s)```.*?```");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
    private static final Pattern SHIPPED = Pattern.compile("\\bmodels/[\\w./-]+\\.(?:yaml|csv)");
    private static final Pattern CODE = Pattern.compile("`([^`\n]+)`");
    private static final String PROGRAM = "java -jar target/quietband.jar ";

    @Test
    void every_class_that_a_page_names_exists() throws IOException {
        Set<String> missing = new TreeSet<>();
        int named = 0;
        for (Path page : pages()) {
            Matcher name = CLASS.matcher(Files.readString(page));
            while (name.find()) {
                named++;
                if (!exists(name.group())) {
                    missing.add(page + ": " + name.group());
                }
            }
        }
        assertThat(missing).isEmpty();
        assertThat(named).as("physics.md alone names more").isGreaterThan(100);
    }

    /** Every equation's section says which class computes it and which test or class comes to the same another way. */
    @Test
    void every_section_of_physics_with_symbols_names_its_class_source_and_second_way() throws IOException {
        String[] sections = Files.readString(PAGES.resolve("physics.md")).split("\n## ");
        List<String> lacking = new ArrayList<>();
        for (String section : sections) {
            boolean equations = section.contains("\n    ") && section.contains("| symbol |");
            if (equations && !(section.contains("Class") && section.contains("econd way") && CLASS.matcher(section).find())) {
                lacking.add(section.lines().findFirst().orElse(""));
            }
        }
        assertThat(lacking).isEmpty();
        assertThat(sections).hasSizeGreaterThan(20);
    }

    @Test
    void the_two_first_pages_are_at_most_150_lines_long() throws IOException {
        for (String page : List.of("README.md", "DEVELOPERS.md")) {
            assertThat(Files.readAllLines(Path.of(page))).as(page).hasSizeLessThanOrEqualTo(150);
        }
    }

    @Test
    void every_link_leads_to_a_file_and_to_a_heading_in_it() throws IOException {
        List<String> broken = new ArrayList<>();
        for (Path page : pages()) {
            Matcher link = LINK.matcher(Files.readString(page));
            while (link.find()) {
                String[] parts = link.group(1).split("#", 2);
                Path target = parts[0].isEmpty() ? page : page.toAbsolutePath().resolveSibling(parts[0]).normalize();
                if (!Files.exists(target) || parts.length == 2 && !headings(target).contains(parts[1])) {
                    broken.add(page + ": " + link.group(1));
                }
            }
        }
        assertThat(broken).isEmpty();
    }

    @Test
    void every_command_has_a_page_that_names_each_of_its_options() throws IOException {
        List<String> missing = new ArrayList<>();
        for (Map.Entry<String, CommandLine> command : program().getSubcommands().entrySet()) {
            String name = command.getKey().equals("new") ? "schema" : command.getKey();
            String page = Files.readString(PAGES.resolve(name + ".md"));
            Set<String> named = words(page);
            for (OptionSpec option : command.getValue().getCommandSpec().options()) {
                if (!option.hidden() && !named.contains(option.longestName())) {
                    missing.add(command.getKey() + " " + option.longestName());
                }
            }
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void every_page_of_a_command_says_what_goes_in_what_comes_out_and_shows_an_example() throws IOException {
        List<String> lacking = new ArrayList<>();
        for (String command : program().getSubcommands().keySet()) {
            String page = Files.readString(PAGES.resolve((command.equals("new") ? "schema" : command) + ".md"));
            for (String part : List.of("nput", "xit status", "```sh", "commands.md#exit-status")) {
                if (!page.contains(part)) {
                    lacking.add(command + ": " + part);
                }
            }
        }
        assertThat(lacking).isEmpty();
    }

    /** Each is shown on a page; together they stay small beside the code. */
    @Test
    void pictures_are_used_and_small() throws IOException {
        StringBuilder all = new StringBuilder();
        for (Path page : pages()) {
            all.append(Files.readString(page));
        }
        long sum = 0;
        try (Stream<Path> pictures = Files.list(Path.of("src/site/resources"))) {
            for (Path picture : pictures.toList()) {
                assertThat(all).contains("resources/" + picture.getFileName());
                assertThat(Files.size(picture)).as(picture.toString()).isLessThan(300_000);
                sum += Files.size(picture);
            }
        }
        assertThat(sum).isBetween(100_000L, 3_000_000L);
    }

    @Test
    void no_page_of_a_command_names_an_option_that_no_command_has() throws IOException {
        Set<String> known = new TreeSet<>();
        program().getSubcommands().values().forEach(c -> c.getCommandSpec().options().forEach(o -> known.addAll(List.of(o.names()))));
        List<String> strangers = new ArrayList<>();
        for (Path page : pages()) {
            for (String word : words(Files.readString(page))) {
                if (word.matches("--[a-z][a-z-]*") && !known.contains(word) && !page.endsWith("DEVELOPERS.md")) {
                    strangers.add(page + ": " + word);
                }
            }
        }
        assertThat(strangers).isEmpty();
    }

    @Test
    void every_command_line_can_be_read_and_the_shipped_files_in_it_are_there() throws IOException {
        int lines = 0;
        for (Path page : pages()) {
            for (String line : commandLines(page)) {
                lines++;
                String[] words = split(line.substring(line.indexOf(PROGRAM) + PROGRAM.length()));
                assertThatCode(() -> program().parseArgs(words)).as(page + ": " + line).doesNotThrowAnyException();
                Matcher file = SHIPPED.matcher(line.replaceAll("results/\\S*", ""));
                while (file.find()) {
                    assertThat(Path.of(file.group())).exists();
                }
            }
        }
        assertThat(lines).isGreaterThan(20);
    }

    @Test
    void every_key_of_a_model_file_stands_on_its_page() throws IOException {
        Set<String> keys = new TreeSet<>();
        collect(new ObjectMapper().readTree(ModelSchema.text()), keys);
        assertThat(keys).contains("stiffness", "sensitivity", "coefficient");
        assertThat(words(Files.readString(PAGES.resolve("model-file.md")))).containsAll(keys);
    }

    /** Names of keys anywhere in a schema. */
    private static void collect(JsonNode schema, Set<String> keys) {
        if (schema.isObject() && schema.path("properties").isObject()) {
            schema.path("properties").propertyNames().forEach(keys::add);
        }
        schema.forEach(inner -> collect(inner, keys));
    }

    private static CommandLine program() {
        return new CommandLine(new Quietband()).setCaseInsensitiveEnumValuesAllowed(true);
    }

    private static boolean exists(String name) {
        try {
            Class.forName(name, false, DocumentsTest.class.getClassLoader());
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    /** Words inside code spans: keys, options, values. */
    private static Set<String> words(String page) {
        Set<String> words = new LinkedHashSet<>();
        Matcher code = CODE.matcher(FENCED.matcher(page).replaceAll(""));
        while (code.find()) {
            words.addAll(List.of(code.group(1).split("[^A-Za-z0-9_-]+")));
        }
        return words;
    }

    private static List<String> commandLines(Path page) throws IOException {
        List<String> lines = new ArrayList<>();
        Matcher block = SHELL.matcher(Files.readString(page));
        while (block.find()) {
            block.group(1).lines().filter(l -> l.contains(PROGRAM)).forEach(lines::add);
        }
        return lines;
    }

    private static String[] split(String line) {
        return WORD.matcher(line).results().map(r -> r.group(1) == null ? r.group(2) : r.group(1)).toArray(String[]::new);
    }

    /** Anchors of a page's headings, as a browser of repositories makes them. */
    private static List<String> headings(Path page) throws IOException {
        return Files.readAllLines(page).stream().filter(l -> l.matches("#+ .*"))
            .map(l -> l.replaceFirst("#+ ", "").toLowerCase(Locale.ROOT).replaceAll("[^\\w -]", "").replace(' ', '-')).toList();
    }

    private static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("models/README.md"),
            Path.of("results/README.md")));
        try (Stream<Path> all = Files.list(PAGES)) {
            all.filter(p -> p.toString().endsWith(".md")).sorted().forEach(pages::add);
        }
        return pages;
    }
}
