package quietband.model.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quietband.model.edit.ModelFile;
import quietband.model.edit.ModelFileTest;

class HostileFileTest {

    @TempDir
    Path directory;

    private String refused(Path file) {
        ModelException e = catchThrowableOfType(ModelException.class, () -> ModelFile.read(file));
        assertThat(e).isNotNull();
        return e.getMessage().replace(directory.toString(), "");
    }

    private String refused(byte[] bytes) throws IOException {
        return refused(Files.write(directory.resolve("m.yaml"), bytes));
    }

    private String refused(String text) {
        ModelException e = catchThrowableOfType(ModelException.class, () -> ModelFile.parse(Path.of("m.yaml"), text));
        assertThat(e).isNotNull();
        return e.getMessage();
    }

    @Test
    void aMissingFileAndADirectoryAreNamed() {
        assertThat(refused(directory.resolve("none.yaml")))
            .isEqualTo("/none.yaml: there is no such file; check the name and the directory");
        assertThat(refused(directory)).isEqualTo(": is a directory; name a file");
    }

    @Test
    void aHugeFileIsRefusedBeforeItIsRead() throws IOException {
        Path huge = directory.resolve("huge.yaml");
        try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(200_000_000);
        }
        assertThat(refused(huge)).isEqualTo("/huge.yaml: has 200 MB; at most 4 MB are read");
    }

    @Test
    void binaryDataIsRefused() throws IOException {
        assertThat(refused(new byte[] {(byte) 0x89, 'P', 'N', 'G', (byte) 0xff, 0})).contains("is not UTF-8 text");
        assertThat(refused(new byte[] {'a', ':', '\n', ' ', 0})).contains("/m.yaml:2:2: control character U+0000");
        assertThat(refused(new byte[0])).contains("is empty");
        assertThat(refused("# nothing\n")).isEqualTo("m.yaml: is empty; 'quietband new' writes a commented start");
    }

    @Test
    void aDeviceIsNoRegularFile() {
        if (Files.exists(Path.of("/dev/zero"))) {
            assertThat(refused(Path.of("/dev/zero"))).contains("is no regular file");
        }
    }

    @Test
    void deepNestingIsRefusedQuickly() {
        assertThat(refused("a: " + "[".repeat(100_000))).contains("nested more than 40 deep");
        assertThat(refused("a: " + "{b: ".repeat(100_000))).contains("nested more than 40 deep");
        assertThat(refused("- ".repeat(100_000))).contains("nested more than 40 deep");
    }

    @Test
    void aliasesThatUnfoldToTooMuchAreRefused() {
        String places = "[" + "{x: 1 mm}, ".repeat(1000) + "]";
        String springs = "    - {at: *p, stiffness: 1 N/mm}\n".repeat(1000);
        assertThat(refused("""
            quietband: 1
            oscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}
            platform:
              mass: 1 kg
              size: 1 mm
              springs:
                - {at: &p %s, stiffness: 1 N/mm}
            """.formatted(places) + springs)).contains("more than 2000 springs");
        String points = "{offset: 1 Hz, level: 1 dBc/Hz}, ".repeat(100_000);
        assertThat(refused("quietband: 1\noscillator: {carrier: 10 MHz, static_phase_noise: &p [" + points
            + "]}\nrequirement: {phase_noise: *p, tones: *p}\n")).contains("more than 300000 values");
    }

    @Test
    void aCoefficientThatNoFilterHasIsRefused() throws IOException {
        String model = "quietband: 1\noscillator: {carrier: 10 MHz, resonator: {sensitivity: 1 ppb/g}}\n"
            + "cancellation: {path: {sample_rate: 100 kHz, ";
        assertThat(refused(model + "taps: [1, -1e308]}}\n")).contains("m.yaml:3:", "cancellation.path.taps", "'-1e308' is out of range");
        Files.writeString(directory.resolve("f.csv"), "sensor_axis,kind,index,b0,b1,b2,a1,a2\nx,tap,0,1e308,,,,\n");
        assertThat(refused((model + "filter: f.csv}}\n").getBytes(java.nio.charset.StandardCharsets.UTF_8)))
            .contains("/f.csv:2: b0: '1e308' is out of range");
    }

    @Test
    void byteOrderMarkAndCrlfAreTolerated() throws IOException {
        String text = Files.readString(ModelFileTest.GOOD.resolve("smallest.yaml")).replace("\n", "\r\n");
        Path file = Files.writeString(directory.resolve("crlf.yaml"), "\ufeff" + text);
        assertThat(ModelFile.read(file).design().oscillator().carrierHz()).isEqualTo(1e7);
        assertThat(ModelFile.read(file).bytes()).isEqualTo(Files.readAllBytes(file));
    }

    @Test
    void aCsvFileWithMarkCrlfCommentsAndSpacesIsRead() throws IOException {
        Path file = Files.writeString(directory.resolve("t.csv"),
            "\ufeff# comment\r\na, b\r\n\r\n1, 2\r\n# more\r\n3,x\r\n4\r\n5,6");
        CsvTable table = CsvTable.read(file);
        assertThat(table.header()).containsExactly("a", "b");
        assertThat(table.size()).isEqualTo(3);
        assertThat(table.line(0)).isEqualTo(4);
        assertThat(table.line(2)).isEqualTo(8);
        assertThat(table.numbers("b")).containsExactly(2, Double.NaN, 6);
        ModelException e = catchThrowableOfType(ModelException.class, table::check);
        assertThat(e.getMessage().replace(file.toString(), "t.csv")).isEqualTo(
            "t.csv:6: b: 'x' does not start with a number; write a plain number\n"
                + "t.csv:7: has 1 cells; the header has 2");
    }
}
