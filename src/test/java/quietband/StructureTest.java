package quietband;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;

/** Who may know whom: the rooms of the program and the libraries each may use. */
@AnalyzeClasses(packages = "quietband", importOptions = ImportOption.DoNotIncludeTests.class)
class StructureTest {

    private static final String[] BASE = {"model", "spectrum", "units"};
    private static final String[] PARTS = {"platform", "oscillator", "cancellation", "vibration"};
    private static final String[] BEHAVIOUR = {"response", "motion"};
    private static final String[] CHANGE = {"tuning", "tolerance", "identification"};

    @ArchTest
    static final ArchRule imports_point_down = layeredArchitecture()
        .consideringOnlyDependenciesInLayers().withOptionalLayers(true)
        .layer("units").definedBy("quietband.units")
        .layer("spectrum").definedBy("quietband.spectrum")
        .layer("model").definedBy("quietband.model")
        .layer("platform").definedBy("quietband.platform")
        .layer("oscillator").definedBy("quietband.oscillator")
        .layer("cancellation").definedBy("quietband.cancellation")
        .layer("vibration").definedBy("quietband.vibration")
        .layer("response").definedBy("quietband.response")
        .layer("motion").definedBy("quietband.motion")
        .layer("tuning").definedBy("quietband.tuning")
        .layer("tolerance").definedBy("quietband.tolerance")
        .layer("identification").definedBy("quietband.identification")
        .layer("report").definedBy("quietband.report")
        .layer("cli").definedBy("quietband.cli")
        .layer("window").definedBy("quietband.window")
        .whereLayer("units").mayNotAccessAnyLayer()
        .whereLayer("spectrum").mayNotAccessAnyLayer()
        .whereLayer("model").mayOnlyAccessLayers("spectrum", "units")
        .whereLayer("platform").mayOnlyAccessLayers(BASE)
        .whereLayer("oscillator").mayOnlyAccessLayers(BASE)
        .whereLayer("cancellation").mayOnlyAccessLayers(BASE)
        .whereLayer("vibration").mayOnlyAccessLayers(BASE)
        .whereLayer("response").mayOnlyAccessLayers(all(PARTS, BASE))
        .whereLayer("motion").mayOnlyAccessLayers(all(PARTS, BASE))
        .whereLayer("tuning").mayOnlyAccessLayers(all(BEHAVIOUR, PARTS, BASE))
        .whereLayer("tolerance").mayOnlyAccessLayers(all(BEHAVIOUR, PARTS, BASE))
        .whereLayer("identification").mayOnlyAccessLayers(all(BEHAVIOUR, PARTS, BASE))
        .whereLayer("report").mayOnlyAccessLayers(all(CHANGE, BEHAVIOUR, PARTS, BASE))
        .whereLayer("cli").mayNotBeAccessedByAnyLayer()
        .whereLayer("window").mayOnlyBeAccessedByLayers("cli")
        .because("a part can then be read, tested and reused without what stands above it; the four parts do not know "
            + "one another because only response and motion bring them together; response and motion do not know "
            + "each other because each is the other's independent check; nothing knows cli and window because the "
            + "same figures must be had without either");

    @ArchTest
    static final ArchRule only_its_command_opens_the_window = noClasses().that().resideInAPackage("quietband.cli")
        .and().doNotHaveFullyQualifiedName("quietband.cli.WindowCommand")
        .should().dependOnClassesThat().resideInAPackage("quietband.window")
        .because("a window is opened from the command line by one command, and no other needs a display");

    @ArchTest
    static final ArchRule every_class_lives_in_a_known_room = classes()
        .should().resideInAnyPackage(rooms())
        .because("the rooms read like a table of contents, one level deep; a new one is a decision, not an accident");

    @ArchTest
    static final ArchRule there_are_no_cycles = slices().matching("quietband.(*)..")
        .should().beFreeOfCycles().allowEmptyShould(true)
        .because("two rooms that need each other are one room");

    @ArchTest
    static final ArchRule only_model_reads_yaml = noClasses().that().resideOutsideOfPackage("quietband.model")
        .should().dependOnClassesThat().resideInAPackage("org.snakeyaml..").allowEmptyShould(true)
        .because("places in a file are known, and comments are kept, in one room only");

    @ArchTest
    static final ArchRule only_report_writes_pages = noClasses().that().resideOutsideOfPackage("quietband.report")
        .should().dependOnClassesThat().resideInAPackage("gg.jte..").allowEmptyShould(true)
        .because("pages and pictures are made from finished results, in one look");

    @ArchTest
    static final ArchRule only_report_and_window_draw_charts = noClasses()
        .that(resideOutsideOfPackages("quietband.report", "quietband.window"))
        .should().dependOnClassesThat().resideInAPackage("org.jfree..").allowEmptyShould(true)
        .because("the chart library stays replaceable, and no computation needs it");

    @ArchTest
    static final ArchRule only_window_opens_windows = noClasses().that().resideOutsideOfPackage("quietband.window")
        .should().dependOnClassesThat(resideInAPackage("javax.swing..").or(resideInAPackage("com.formdev..")))
        .allowEmptyShould(true)
        .because("everything else runs on a machine without a display");

    @ArchTest
    static final ArchRule only_cli_parses_a_command_line = noClasses().that().resideOutsideOfPackage("quietband.cli")
        .should().dependOnClassesThat().resideInAPackage("picocli..").allowEmptyShould(true)
        .because("options are words of the command line, not of the computation");

    @ArchTest
    static final ArchRule only_the_program_itself_ends_the_process = noClasses()
        .that().haveNameNotMatching("quietband\\.cli\\.Quietband(\\$.*)?")
        .should().callMethod(System.class, "exit", int.class)
        .orShould().callMethod(Runtime.class, "exit", int.class)
        .orShould().callMethod(Runtime.class, "halt", int.class).allowEmptyShould(true)
        .because("a command that returns its status can be tested and called from the window");

    @ArchTest
    static final ArchRule nothing_prints_outside_cli = noClasses().that().resideOutsideOfPackage("quietband.cli")
        .should(ACCESS_STANDARD_STREAMS).allowEmptyShould(true)
        .because("standard output is data and belongs to the command that was asked for it");

    private static String[] all(String[]... groups) {
        return Arrays.stream(groups).flatMap(Arrays::stream).toArray(String[]::new);
    }

    private static String[] rooms() {
        String[] names = all(new String[] {"cli", "window", "report"}, CHANGE, BEHAVIOUR, PARTS, BASE);
        return Arrays.stream(names).map(name -> "quietband." + name).toArray(String[]::new);
    }
}
