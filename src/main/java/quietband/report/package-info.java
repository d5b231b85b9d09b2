/**
 * Charts, tables, summaries and pages made from finished results, and the directories they are written to. Nothing
 * is computed here; each inner room shows the result of one study.
 */
package quietband.report;
