package quietband.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Starts the program a second time with the class data archive that the build leaves beside the jar, since a runnable jar
 * cannot name options of the virtual machine: whoever judges a design again and again waits half as long. The first process
 * passes streams, status and signals on. Nothing is started again when there is no archive, when the user gave options of
 * the virtual machine, or where the system does not tell. Plain classes, no lambdas: these take longest at a start.
 */
final class FastStart {

    /** Set in the process that was started again, to the number of the first. */
    static final String AGAIN = "quietband.again";
    /** Commands that are done before thorough compilation pays, unless many points are asked for. */
    private static final Set<String> SHORT = Set.of("assess", "compare", "schema", "new", "orient");
    private static final int MANY_DIGITS = 5;
    /** Heap in bytes that a machine must allow by itself before a short command takes 150 MiB at once. */
    private static final long ROOMY = 1L << 29;
    /** Small pieces for the thorough compiler: larger ones take seconds, and units are not judged sooner. */
    private static final List<String> UNITS = List.of("-XX:FreqInlineSize=60", "-XX:InlineSmallCode=500",
        "-XX:Tier4BackEdgeThreshold=400000");

    /**
     * What runs for a moment is compiled in a moment, small method by small method and the busy ones only, and the jar's classes, with
     * which the build has run already, are not verified again.
     */
    private static final List<String> MOMENT = List.of("-XX:TieredStopAtLevel=1", "-XX:C1MaxInlineSize=4",
        "-XX:Tier3InvocationThreshold=400", "-XX:Tier3MinInvocationThreshold=200", "-XX:Tier3CompileThreshold=3000",
        "-XX:-BytecodeVerificationRemote");

    /** No second process: the work is to be done in this one. */
    static final int HERE = -1;

    private FastStart() { }

    /**
     * Runs the program again if that is sooner; its exit status, {@link #HERE} when this process is to do the work.
     *
     * @param end  ends this process at once; called when it is the second and the first is gone without a word
     * @param args the program's arguments
     */
    static int again(Runnable end, String... args) {
        Long first = Long.getLong(AGAIN);
        if (first != null) {
            new ParentWatch(first, end).start();
            return HERE;
        }
        List<String> command = command(Path.of(System.getProperty("java.home")), System.getProperty("java.class.path"),
            OwnProcess.arguments(), System.getenv("JAVA_TOOL_OPTIONS") != null || System.getenv("JDK_JAVA_OPTIONS") != null, args);
        return command.isEmpty() ? HERE : run(command);
    }

    /**
     * The command line of the second process, empty for none.
     *
     * @param home      of the Java runtime
     * @param classPath of this process: the jar alone when it was started by {@code java -jar}
     * @param given     all arguments of this process, as the system tells
     * @param options   whether the environment holds options of the virtual machine
     * @param args      the program's own arguments
     */
    static List<String> command(Path home, String classPath, String[] given, boolean options, String... args) {
        Path archive = archive(classPath);
        boolean plain = given.length == args.length + 2 && given[0].equals("-jar");
        if (options || !plain || archive == null || !Files.isRegularFile(archive)) {
            return List.of();
        }
        List<String> c = new ArrayList<>(List.of(home.resolve("bin").resolve("java").toString(),
            "-XX:+IgnoreUnrecognizedVMOptions", "-Xshare:auto", "-Xlog:disable", "-XX:-UsePerfData", "-XX:SharedArchiveFile=" + archive,
            // where its addresses are right, instead of writing other ones all over it
            "-XX:+UnlockDiagnosticVMOptions", "-XX:ArchiveRelocationMode=0",
            "-D" + AGAIN + "=" + OwnProcess.number()));
        boolean window = args.length > 0 && args[0].equals("window");
        if (!window) {
            // its pauses are short for what a run keeps, and no further threads take time from the work
            c.add("-XX:+UseSerialGC");
        }
        if (isShort(args)) {
            c.addAll(MOMENT);
            if (Runtime.getRuntime().maxMemory() > ROOMY) {
                // room for all that a short run leaves behind, in large pages where the system has them: nothing is collected
                c.addAll(List.of("-Xms150m", "-Xmn130m", "-XX:+UseTransparentHugePages", "-XX:-PrintWarnings"));
            }
        } else if (args[0].equals("tolerance")) {
            c.addAll(UNITS);
            Path choice = beside(classPath, "-compile.json");
            if (Files.isRegularFile(choice) && !many("--units", args)) {
                // the virtual machine tells on standard output that it has read them, unless it is silent
                c.addAll(List.of("-XX:-DisplayVMOutput", "-XX:CompilerDirectivesFile=" + choice));
            }
        }
        c.addAll(List.of("-cp", classPath, Quietband.class.getName()));
        c.addAll(Arrays.asList(args));
        return c;
    }

    /** Where the archive of a jar is for this virtual machine, which no other can use; null when it is no jar alone. */
    static Path archive(String classPath) {
        return classPath.endsWith(".jar") && !classPath.contains(System.getProperty("path.separator"))
            ? beside(classPath, "-" + System.getProperty("java.vm.version") + ".jsa") : null;
    }

    private static Path beside(String jar, String ending) {
        return Path.of(jar.substring(0, jar.length() - ".jar".length()) + ending);
    }

    private static boolean isShort(String... args) {
        if (args.length > 0 && !args[0].startsWith("-") && !SHORT.contains(args[0])) {
            return false;
        }
        return !many("--points", args);
    }

    /** Whether an option is given a number of many digits. */
    private static boolean many(String option, String... args) {
        for (int i = 1; i < args.length; i++) {
            String value = args[i].startsWith(option + "=") ? args[i].substring(option.length() + 1)
                : args[i - 1].equals(option) ? args[i] : "";
            if (value.length() > MANY_DIGITS) {
                return true;
            }
        }
        return false;
    }

    private static int run(List<String> command) {
        Process process;
        try {
            process = new ProcessBuilder(command).inheritIO().start();
        } catch (IOException e) {
            return HERE;
        }
        Runtime.getRuntime().addShutdownHook(new PassOn(process));
        return awaited(process);
    }

    private static int awaited(Process process) {
        while (true) {
            try {
                return process.waitFor();
            } catch (InterruptedException e) {
                process.destroy();
            }
        }
    }

    /** Hands the wish to end on, and waits until it is met. */
    private static final class PassOn extends Thread {

        private final Process process;

        PassOn(Process process) {
            this.process = process;
        }

        @Override
        public void run() {
            process.destroy();
            awaited(process);
        }
    }

    /**
     * Ends the second process when the first is gone. It looks now and then: a thread that waits in a read, say of a pipe, keeps
     * the virtual machine from ending for 0.3 s.
     */
    private static final class ParentWatch extends Thread {

        private static final long EVERY_MS = 100;

        private final long first;
        private final Runnable end;

        ParentWatch(long first, Runnable end) {
            super("parent watch");
            this.first = first;
            this.end = end;
            setDaemon(true);
        }

        @Override
        public void run() {
            try {
                Optional<ProcessHandle> parent;
                do {
                    Thread.sleep(EVERY_MS);
                    parent = ProcessHandle.current().parent();
                } while (parent.isPresent() && parent.get().pid() == first);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
            end.run();
        }
    }
}
