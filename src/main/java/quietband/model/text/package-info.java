/**
 * Text files, YAML nodes, CSV tables, edits by offset, and problems with their places.
 *
 * <p>For other rooms: {@link quietband.model.text.CsvTable}, {@link quietband.model.text.ModelException},
 * {@link quietband.model.text.FileProblem}.
 *
 * <p>With them: {@link quietband.model.text.SpellingSuggestion}, {@link quietband.model.text.CellText},
 * {@link quietband.model.text.DataText}.
 */
package quietband.model.text;
