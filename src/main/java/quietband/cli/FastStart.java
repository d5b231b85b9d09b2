package quietband.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Starts the program a second time with the class data archive that the build leaves beside the jar, since a runnable jar
 * cannot name options of the virtual machine: whoever judges a design again and again waits half as long. The first process
 * passes streams, status and signals on. Nothing is started again when there is no archive, when the user gave options of
 * the virtual machine, or where the system does not tell.
 */
final class FastStart {

    /** Set in the process that was started again. */
    private static final String AGAIN = "quietband.again";
    /** Commands that are done before thorough compilation pays, unless many points are asked for. */
    private static final Set<String> SHORT = Set.of("assess", "compare", "schema", "new", "orient");
    private static final int MANY_DIGITS = 5;

    private FastStart() { }

    /**
     * Runs the program again if that is sooner; its exit status, empty when this process is to do the work.
     *
     * @param end  ends this process at once; called when it is the second and the first is gone without a word
     * @param args the program's arguments
     */
    static OptionalInt again(Runnable end, String... args) {
        if (System.getProperty(AGAIN) != null) {
            watchParent(end);
            return OptionalInt.empty();
        }
        String[] given = ProcessHandle.current().info().arguments().orElse(new String[0]);
        Optional<List<String>> command = command(Path.of(System.getProperty("java.home")), System.getProperty("java.class.path"),
            given, System.getenv("JAVA_TOOL_OPTIONS") != null || System.getenv("JDK_JAVA_OPTIONS") != null, args);
        return command.isEmpty() ? OptionalInt.empty() : run(command.get());
    }

    /**
     * The command line of the second process.
     *
     * @param home      of the Java runtime
     * @param classPath of this process: the jar alone when it was started by {@code java -jar}
     * @param given     all arguments of this process, as the system tells
     * @param options   whether the environment holds options of the virtual machine
     * @param args      the program's own arguments
     */
    static Optional<List<String>> command(Path home, String classPath, String[] given, boolean options, String... args) {
        Path archive = archive(classPath);
        boolean plain = given.length == args.length + 2 && given[0].equals("-jar");
        if (options || !plain || archive == null || !Files.isRegularFile(archive)) {
            return Optional.empty();
        }
        List<String> c = new ArrayList<>(List.of(home.resolve("bin").resolve("java").toString(),
            "-XX:+IgnoreUnrecognizedVMOptions", "-Xshare:auto", "-Xlog:disable", "-XX:SharedArchiveFile=" + archive,
            "-D" + AGAIN + "=true"));
        if (isShort(args)) {
            c.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xms48m"));
        }
        c.addAll(List.of("-jar", classPath));
        c.addAll(Arrays.asList(args));
        return Optional.of(c);
    }

    private static Path archive(String classPath) {
        return classPath.endsWith(".jar") && !classPath.contains(System.getProperty("path.separator"))
            ? Path.of(classPath.substring(0, classPath.length() - 4) + ".jsa") : null;
    }

    private static boolean isShort(String... args) {
        if (args.length == 0 || !SHORT.contains(args[0])) {
            return false;
        }
        for (int i = 1; i < args.length; i++) {
            String points = args[i].startsWith("--points=") ? args[i].substring(9) : args[i - 1].equals("--points") ? args[i] : "";
            if (points.length() > MANY_DIGITS) {
                return false;
            }
        }
        return true;
    }

    private static OptionalInt run(List<String> command) {
        Process process;
        try {
            // a pipe in place of standard input, which no command reads: it closes when this process ends, however it ends
            process = new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.INHERIT)
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        } catch (IOException e) {
            return OptionalInt.empty();
        }
        Thread passOn = new Thread(() -> {
            process.destroy();
            awaited(process);
        });
        Runtime.getRuntime().addShutdownHook(passOn);
        int status = awaited(process);
        return OptionalInt.of(status);
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

    private static void watchParent(Runnable end) {
        Thread watch = new Thread(() -> {
            try {
                while (System.in.read() >= 0) {
                    // nothing is ever written
                }
            } catch (IOException e) {
                // closed: the same as its end
            }
            end.run();
        }, "parent watch");
        watch.setDaemon(true);
        watch.start();
    }
}
