/** Tables, summaries, charts and pages made from finished results, and the directories they are written to. */
package quietband.report;
