/**
 * Result directories written whole or not at all, numbers as files show them, provenance.
 */
package quietband.report.file;
