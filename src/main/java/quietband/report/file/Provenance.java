package quietband.report.file;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import quietband.model.edit.ModelFile;

/**
 * Where a result comes from; stands in every result.
 *
 * @param command   that made it
 * @param version   of the program
 * @param input     name of the model or data file
 * @param modelHash SHA-256, hexadecimal
 * @param seed      of all randomness in it
 * @param read      files that it was made from
 */
public record Provenance(String command, String version, String input, String modelHash, long seed, List<Path> read) {

    public Provenance {
        read = List.copyOf(read);
    }

    /** Of a model and the files it refers to. */
    public static Provenance of(String command, String version, ModelFile model, long seed) {
        Stream<Path> referred = model.files().keySet().stream().map(model.path()::resolveSibling);
        return new Provenance(command, version, String.valueOf(model.path().getFileName()), model.hash(), seed,
            Stream.concat(Stream.of(model.path()), referred).toList());
    }

    /** The mark of the result's directory. */
    public ResultMark mark() {
        return new ResultMark(command, version, modelHash, seed);
    }

    /** The first digits of the model's hash. */
    public String shortHash() {
        return modelHash.substring(0, Math.min(12, modelHash.length()));
    }

    /** Writes it as fields of a summary. */
    public void fields(Json json) {
        json.field("command", command).field("version", version).field("model", input).field("model_hash", modelHash)
            .field("seed", seed);
    }
}
