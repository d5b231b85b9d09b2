package quietband;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Rules for the files of the repository that no compiler holds. */
class RepositoryTest {

    private static final Path ROOT = Path.of("");
    private static final Set<String> TOP = Set.of("LICENSE", "README.md", "DEVELOPERS.md", "pom.xml", "src", "models",
        "results", "target");
    private static final Set<String> TEXT = Set.of("java", "md", "txt", "yaml", "csv", "json", "xml", "jte", "html",
        "properties", "run", "config");
    private static final Pattern PLACE_ON_A_MACHINE = Pattern.compile("(?<![\\w.])/(?:work|tmp|root|home|Users)/");
    private static final Pattern LEFT_OVER = Pattern.compile("\\b(?:TO" + "DO|FIX" + "ME|XX" + "X)\\b");
    private static final Pattern CATCH_ALL = Pattern.compile("catch \\((?:final )?(?:Exception|Throwable) ");
    private static final Pattern DEPENDENCY = Pattern.compile("<dependency><groupId>([^<]+)</groupId>"
        + "<artifactId>([^<]+)</artifactId><version>([^<]+)</version></dependency>");

    @Test
    void the_top_level_holds_only_what_a_visitor_expects() throws IOException {
        try (Stream<Path> top = Files.list(ROOT.toAbsolutePath())) {
            assertThat(top.map(p -> p.getFileName().toString()).filter(name -> !name.startsWith(".")))
                .as("hidden files are the build's own").isSubsetOf(TOP);
        }
    }

    @Test
    void no_java_file_is_longer_than_400_lines_and_no_line_than_140_characters() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : files(p -> extension(p).equals("java"))) {
            List<String> lines = Files.readAllLines(file);
            if (lines.size() > 400) {
                found.add(file + ": " + lines.size() + " lines; split it by idea");
            }
            for (int i = 0; i < lines.size(); i++) {
                if (lines.get(i).length() > 140) {
                    found.add(file + ":" + (i + 1) + ": " + lines.get(i).length() + " characters");
                }
            }
        }
        assertThat(found).isEmpty();
    }

    @Test
    void no_text_file_names_a_place_on_somebodys_machine() throws IOException {
        assertThat(matches(PLACE_ON_A_MACHINE, p -> true)).isEmpty();
    }

    @Test
    void no_text_file_holds_a_left_over_note() throws IOException {
        assertThat(matches(LEFT_OVER, p -> true)).isEmpty();
    }

    @Test
    void no_class_catches_everything() throws IOException {
        assertThat(matches(CATCH_ALL, p -> p.startsWith("src/main/java")))
            .as("catch what can be handled; picocli's handler of a defect is the only place for the rest").isEmpty();
    }

    @Test
    void every_shipped_library_is_named_with_its_version_in_the_notices() throws IOException {
        String pom = Files.readString(ROOT.resolve("pom.xml"));
        String notices = Files.readString(ROOT.resolve("src/main/resources/META-INF/THIRD-PARTY.txt"));
        Matcher shipped = DEPENDENCY.matcher(pom);
        List<String> seen = new ArrayList<>();
        while (shipped.find()) {
            String version = shipped.group(3).startsWith("${")
                ? property(pom, shipped.group(3).substring(2, shipped.group(3).length() - 1)) : shipped.group(3);
            seen.add(shipped.group(1) + ":" + shipped.group(2) + ":" + version);
        }
        assertThat(seen).hasSizeGreaterThan(10).allSatisfy(name -> assertThat(notices).contains(name));
    }

    private static String property(String pom, String name) {
        Matcher value = Pattern.compile("<" + Pattern.quote(name) + ">([^<]+)<").matcher(pom);
        assertThat(value.find()).as("property " + name).isTrue();
        return value.group(1);
    }

    private static List<String> matches(Pattern pattern, Predicate<Path> where) throws IOException {
        List<String> found = new ArrayList<>();
        Predicate<Path> ours = p -> TEXT.contains(extension(p)) && !p.toString().contains("licenses");
        for (Path file : files(ours.and(where))) {
            List<String> lines = Files.readAllLines(file);
            for (int i = 0; i < lines.size(); i++) {
                if (pattern.matcher(lines.get(i)).find()) {
                    found.add(file + ":" + (i + 1) + ": " + lines.get(i).strip());
                }
            }
        }
        return found;
    }

    /** Files of the repository, relative to its root, without what is built, written by commands or Git's own. */
    private static List<Path> files(Predicate<Path> wanted) throws IOException {
        List<Path> found = new ArrayList<>();
        for (String top : List.of("README.md", "DEVELOPERS.md", "pom.xml", "src", "models", "results/README.md", ".ci",
            ".mvn")) {
            if (Files.exists(Path.of(top))) {
                try (Stream<Path> all = Files.walk(Path.of(top))) {
                    all.filter(Files::isRegularFile).filter(wanted).forEach(found::add);
                }
            }
        }
        return found;
    }

    private static String extension(Path file) {
        String name = file.getFileName().toString();
        return name.substring(name.lastIndexOf('.') + 1);
    }
}
