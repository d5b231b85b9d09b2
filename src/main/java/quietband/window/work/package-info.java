/**
 * What is computed beside the event thread: figures of a view, comparison of variants, drawn units, proposals of
 * commands. What waits is replaced, never queued.
 */
package quietband.window.work;
