package quietband.cli.terminal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's version, written by the build. */
public final class Version implements IVersionProvider {

    /** Such as 1.2.0. */
    public static String number() {
        Properties properties = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("/quietband/version.properties")) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"quietband " + number()};
    }
}
