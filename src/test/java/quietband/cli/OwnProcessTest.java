package quietband.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What this process knows of itself is what Java's own way tells, and what it was started with. */
class OwnProcessTest {

    /** Started by the test: prints its number and its arguments. */
    static final class Telling {

        public static void main(String[] args) {
            System.out.print(OwnProcess.number() + "|" + String.join("|", OwnProcess.arguments()));
        }
    }

    @Test
    void its_number_is_that_of_its_handle() {
        assertThat(OwnProcess.number()).isEqualTo(ProcessHandle.current().pid());
    }

    @Test
    void its_arguments_come_as_they_were_given() throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String[] given = {"-Xint", "-cp", System.getProperty("java.class.path"), Telling.class.getName(), "two words", "", "Größe"};
        String[] line = new String[given.length + 1];
        line[0] = java;
        System.arraycopy(given, 0, line, 1, given.length);
        Process p = new ProcessBuilder(line).start();
        String told = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(p.waitFor()).isZero();
        assertThat(told).startsWith(p.pid() + "|").hasSizeGreaterThan(20);
        String[] parts = told.split("\\|", -1);
        assertThat(parts).hasSize(given.length + 1);
        assertThat(parts[1]).isEqualTo("-Xint");
        assertThat(parts[5]).isEqualTo("two words");
        assertThat(parts[6]).isEmpty();
    }
}
