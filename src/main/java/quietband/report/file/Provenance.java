package quietband.report.file;

/**
 * Where a result comes from; stands in every result.
 *
 * @param command   that made it
 * @param version   of the program
 * @param input     name of the model or data file
 * @param modelHash SHA-256, hexadecimal
 * @param seed      of all randomness in it
 */
public record Provenance(String command, String version, String input, String modelHash, long seed) {

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
