/**
 * Result directories written whole or not at all, CSV and JSON, numbers as files show them, provenance.
 *
 * <p>For other rooms: {@link quietband.report.file.ResultDirectory}, {@link quietband.report.file.Provenance},
 * {@link quietband.report.file.NumberFormat}.
 *
 * <p>With them: {@link quietband.report.file.QuantityText}, {@link quietband.report.file.ResultException},
 * {@link quietband.report.file.ResultMark}, {@link quietband.report.file.ContentHash}.
 */
package quietband.report.file;
