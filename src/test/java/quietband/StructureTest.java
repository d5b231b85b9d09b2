package quietband;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Who may know whom: the rooms of the program and the libraries each may use. */
@AnalyzeClasses(packages = "quietband", importOptions = ImportOption.DoNotIncludeTests.class)
class StructureTest {

    /** From the top down: a room may use those of every line below its own, and none of its own line. */
    static final List<List<String>> ROOMS = List.of(
        List.of("cli", "window"),
        List.of("report"),
        List.of("study"),
        List.of("tuning", "filter", "tolerance", "lot", "identification"),
        List.of("response", "motion"),
        List.of("demand"),
        List.of("platform", "oscillator", "cancellation", "vibration"),
        List.of("model"),
        List.of("spectrum"),
        List.of("numerics", "units", "work"));

    @ArchTest
    static final ArchRule imports_point_down = layers()
        .because("a part can then be read, tested and reused without what stands above it; the four parts do not know "
            + "one another because only response and motion bring them together; response and motion do not know "
            + "each other because each is the other's independent check; nothing knows cli and window because the "
            + "same figures must be had without either");

    @ArchTest
    static final ArchRule only_its_command_opens_the_window = noClasses().that().resideInAPackage("quietband.cli..")
        .and().doNotHaveSimpleName("WindowCommand")
        .should().dependOnClassesThat().resideInAPackage("quietband.window..")
        .because("a window is opened from the command line by one command, and no other needs a display");

    @ArchTest
    static final ArchRule every_class_lives_in_a_known_room = classes()
        .should().resideInAnyPackage(ROOMS.stream().flatMap(List::stream).map(StructureTest::room).toArray(String[]::new))
        .because("the rooms read like a table of contents; a new one is a decision, not an accident");

    @ArchTest
    static final ArchRule no_two_rooms_need_each_other = slices().matching("quietband.(**)")
        .should().beFreeOfCycles()
        .because("two rooms that need each other are one room, inner rooms too");

    @ArchTest
    static final ArchRule only_model_reads_yaml = noClasses().that().resideOutsideOfPackage("quietband.model..")
        .should().dependOnClassesThat().resideInAPackage("org.snakeyaml..")
        .because("places in a file are known, and comments are kept, in one room only");

    @ArchTest
    static final ArchRule only_report_writes_pages = noClasses().that().resideOutsideOfPackage("quietband.report..")
        .should().dependOnClassesThat().resideInAPackage("gg.jte..")
        .because("pages and pictures are made from finished results, in one look");

    @ArchTest
    static final ArchRule report_only_reads_finished_results = noClasses().that().resideInAPackage("quietband.report..")
        .should().dependOnClassesThat().haveNameMatching("quietband\\.(cancellation|tolerance\\.kernel)\\..*|quietband\\..*\\."
            + "(Assembly|DynamicStiffness|PlatformMotion|RelativeMotion|Resonances|ResidualResponse|Assessor|Cures|Sidebands)")
        .orShould().callCodeUnitWhere(worksOnADesign())
        .because("what a command asks is run in study; what takes a design or a model works, what report needs are its results");

    @ArchTest
    static final ArchRule only_report_and_window_draw_charts = noClasses()
        .that(resideOutsideOfPackages("quietband.report..", "quietband.window.."))
        .should().dependOnClassesThat().resideInAPackage("org.jfree..")
        .because("the chart library stays replaceable, and no computation needs it");

    @ArchTest
    static final ArchRule only_window_opens_windows = noClasses().that().resideOutsideOfPackage("quietband.window..")
        .should().dependOnClassesThat(resideInAPackage("javax.swing..").or(resideInAPackage("com.formdev..")))
        .because("everything else runs on a machine without a display");

    @ArchTest
    static final ArchRule only_cli_parses_a_command_line = noClasses().that().resideOutsideOfPackage("quietband.cli..")
        .should().dependOnClassesThat().resideInAPackage("picocli..")
        .because("options are words of the command line, not of the computation");

    @ArchTest
    static final ArchRule only_the_program_itself_ends_the_process = noClasses()
        .that().haveNameNotMatching("quietband\\.cli\\.Quietband(\\$.*)?")
        .should().callMethod(System.class, "exit", int.class)
        .orShould().callMethod(Runtime.class, "exit", int.class)
        .orShould().callMethod(Runtime.class, "halt", int.class)
        .because("a command that returns its status can be tested and called from the window");

    @ArchTest
    static final ArchRule nothing_prints_outside_cli = noClasses().that().resideOutsideOfPackage("quietband.cli..")
        .should(ACCESS_STANDARD_STREAMS)
        .because("standard output is data and belongs to the command that was asked for it");

    private static DescribedPredicate<JavaCall<?>> worksOnADesign() {
        Set<String> inputs = Set.of("Design", "ModelFile", "MonteCarloPlan");
        DescribedPredicate<JavaClass> rooms = resideInAnyPackage(Stream.of("response", "motion", "tuning", "filter", "tolerance", "lot",
            "identification").map(StructureTest::room).toArray(String[]::new));
        return DescribedPredicate.describe("work on a design, in a room below study", call -> rooms.test(call.getTargetOwner())
            && call.getTarget().getRawParameterTypes().stream().anyMatch(type -> inputs.contains(type.getSimpleName())));
    }

    private static LayeredArchitecture layers() {
        LayeredArchitecture rule = layeredArchitecture().consideringOnlyDependenciesInLayers().withOptionalLayers(true);
        for (List<String> line : ROOMS) {
            for (String name : line) {
                rule = rule.layer(name).definedBy(room(name));
            }
        }
        List<String> below = new ArrayList<>();
        for (int i = ROOMS.size() - 1; i >= 0; i--) {
            for (String name : ROOMS.get(i)) {
                List<String> known = new ArrayList<>(below);
                if (name.equals("cli")) {
                    known.add("window");
                }
                rule = known.isEmpty() ? rule.whereLayer(name).mayNotAccessAnyLayer()
                    : rule.whereLayer(name).mayOnlyAccessLayers(known.toArray(String[]::new));
            }
            below.addAll(ROOMS.get(i));
        }
        return rule;
    }

    private static String room(String name) {
        return "quietband." + name + "..";
    }
}
