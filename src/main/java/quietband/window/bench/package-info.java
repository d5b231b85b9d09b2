/**
 * What is worked on, without a widget: variants, steps, undo, recovery.
 */
package quietband.window.bench;
