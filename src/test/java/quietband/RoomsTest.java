package quietband;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Sizes of rooms, and their pages: {@code package-info.java} says what is computed and which types others use. */
class RoomsTest {

    private static final Path MAIN = Path.of("src/main/java/quietband");
    private static final String OTHERS = "For other rooms:";
    private static final String WITH = "With them:";
    private static final Pattern LINK = Pattern.compile("\\{@link (quietband[\\w.]*)\\}");
    /** A line of jdeps: room and rest of the one that uses; room, inner room and outermost type of the one that is used. */
    private static final Pattern USE = Pattern.compile(
        "(?m)^\\s+quietband\\.(\\w+)\\.(\\S+)\\s+-> quietband\\.(\\w+)\\.([a-z]\\w*)\\.(\\w+)");
    private static final Pattern EQUATIONS = Pattern.compile("Equations: physics\\.md, ([^.]*)\\.");

    @Test
    void rooms_have_at_most_15_files_and_inner_rooms_20() {
        List<String> large = new ArrayList<>();
        for (Path room : rooms()) {
            long files = types(room).count();
            if (files > (inner(room) ? 20 : 15)) {
                large.add(room + ": " + files + " files");
            }
            assertThat(MAIN.relativize(room).getNameCount()).as("%s: rooms are one level deep inside a room", room).isLessThanOrEqualTo(2);
        }
        assertThat(large).isEmpty();
    }

    @Test
    void every_room_has_a_page_of_two_lines_or_more() {
        assertThat(rooms()).allSatisfy(room -> assertThat(page(room).lines().filter(l -> l.startsWith(" * ") && l.length() > 4))
            .as(room + "/package-info.java").hasSizeGreaterThanOrEqualTo(2));
    }

    @Test
    void equations_that_a_page_names_are_sections_of_physics() throws IOException {
        Set<String> sections = Files.readAllLines(Path.of("src/site/markdown/physics.md")).stream().filter(l -> l.startsWith("## "))
            .map(l -> l.substring(3)).collect(Collectors.toSet());
        Set<String> named = new TreeSet<>();
        for (Path room : rooms()) {
            Matcher equations = EQUATIONS.matcher(page(room).replaceAll("\\s*\\n \\* ?", " "));
            while (equations.find()) {
                named.addAll(List.of(equations.group(1).split(", ")));
            }
        }
        assertThat(sections).containsAll(named);
        assertThat(named).as("most of the equations are named by the room that computes them").hasSizeGreaterThan(15);
    }

    @Test
    void an_inner_rooms_page_links_the_types_that_others_use_and_no_more() {
        Map<String, Set<String>> used = usedFromElsewhere();
        List<String> wrong = new ArrayList<>();
        for (Path room : rooms()) {
            String name = packageOf(room);
            if (inner(room)) {
                String page = page(room);
                Set<String> entries = links(between(page, OTHERS, WITH));
                Set<String> shown = new TreeSet<>(entries);
                shown.addAll(links(between(page, WITH, "*/")));
                Set<String> real = used.getOrDefault(name, Set.of());
                if (!shown.equals(real) || entries.size() > 3 || entries.isEmpty() != real.isEmpty()) {
                    wrong.add(name + ": page shows " + shown + " with entries " + entries + ", others use " + real);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** A file holds one type at its top and has its name; the compiler holds that. */
    @Test
    void no_two_types_share_a_simple_name() {
        Map<String, List<Path>> named = rooms().stream().flatMap(RoomsTest::types)
            .collect(Collectors.groupingBy(file -> file.getFileName().toString()));
        assertThat(named).hasSizeGreaterThan(400);
        assertThat(named.values().stream().filter(files -> files.size() > 1)).isEmpty();
    }

    /** By inner room: its types, nested ones counted as the type they stand in, that another top-level room names. */
    private static Map<String, Set<String>> usedFromElsewhere() {
        StringWriter listed = new StringWriter();
        ToolProvider jdeps = ToolProvider.findFirst("jdeps").orElseThrow();
        jdeps.run(new PrintWriter(listed), new PrintWriter(listed), "-v", "target/classes");
        Map<String, Set<String>> used = new TreeMap<>();
        USE.matcher(listed.toString()).results().filter(use -> !use.group(1).equals(use.group(3)) && !use.group(2).contains("package-info"))
            .forEach(use -> used.computeIfAbsent("quietband." + use.group(3) + "." + use.group(4), r -> new TreeSet<>())
                .add("quietband." + use.group(3) + "." + use.group(4) + "." + use.group(5)));
        assertThat(used).hasSizeGreaterThan(30);
        return used;
    }

    private static Set<String> links(String text) {
        return LINK.matcher(text).results().map(r -> r.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    private static String between(String page, String from, String to) {
        int start = page.indexOf(from);
        int end = page.indexOf(to, Math.max(start, 0));
        return start < 0 ? "" : page.substring(start, end < 0 ? page.indexOf("*/") : end);
    }

    private static String page(Path room) {
        try {
            return Files.readString(room.resolve("package-info.java"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean inner(Path room) {
        return MAIN.relativize(room).getNameCount() == 2;
    }

    private static String packageOf(Path room) {
        return "quietband." + MAIN.relativize(room).toString().replace(room.getFileSystem().getSeparator(), ".");
    }

    /** Folders that hold code. */
    private static List<Path> rooms() {
        try (Stream<Path> all = Files.walk(MAIN)) {
            return all.filter(p -> Files.isDirectory(p) && !p.equals(MAIN)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Java files that lie directly in a room, its page apart. */
    private static Stream<Path> types(Path room) {
        try (Stream<Path> files = Files.list(room)) {
            return files.filter(p -> p.toString().endsWith(".java") && !p.endsWith("package-info.java")).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
