package quietband.tuning.parts;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Wire for coil springs. Its tensile strength falls with the diameter, {@code R_m = A (1 mm/d)^m}.
 *
 * @param name         of the material
 * @param youngs       modulus E, Pa
 * @param shear        modulus G, Pa
 * @param density      kg/m^3
 * @param strength     A, Pa at 1 mm
 * @param exponent     m
 * @param thinnest     diameter the strength holds from, m
 * @param thickest     to, m
 * @param allowedShare largest shear stress as a share of the tensile strength
 */
public record WireMaterial(String name, double youngs, double shear, double density, double strength, double exponent,
                           double thinnest, double thickest, double allowedShare) {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true)
        .setCommentMarker('#').setTrim(true).get();

    /** Tensile strength of a wire diameter in m, Pa. */
    public double tensile(double diameter) {
        return strength * StrictMath.pow(1e-3 / diameter, exponent);
    }

    /** Largest shear stress allowed in it, Pa. */
    public double allowed(double diameter) {
        return allowedShare * tensile(diameter);
    }

    /** Whether the strength is known for a diameter in m. */
    boolean covers(double diameter) {
        return diameter >= thinnest * (1 - 1e-9) && diameter <= thickest * (1 + 1e-9);
    }

    /** The table shipped with the program; its sources stand in its header. */
    public static List<WireMaterial> table() {
        List<WireMaterial> all = new ArrayList<>();
        for (CSVRecord r : rows("wire-materials.csv")) {
            all.add(new WireMaterial(r.get("material"), 1e9 * number(r, "youngs_gpa"), 1e9 * number(r, "shear_gpa"),
                number(r, "density_kg_per_m3"), 1e6 * number(r, "strength_mpa"), number(r, "exponent"),
                1e-3 * number(r, "from_mm"), 1e-3 * number(r, "to_mm"), number(r, "allowed_share")));
        }
        return all;
    }

    /** Standard wire diameters, m, rising. */
    public static double[] sizes() {
        return rows("wire-sizes.csv").stream().mapToDouble(r -> 1e-3 * number(r, "diameter_mm")).toArray();
    }

    static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    static List<CSVRecord> rows(String resource) {
        try (InputStream in = WireMaterial.class.getResourceAsStream(resource);
             BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return FORMAT.parse(reader).getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
