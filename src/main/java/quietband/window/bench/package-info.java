/**
 * The whole state of the window without a widget: variants of a model's text, each step as the stretch of text it
 * changed, undo and redo, saving, recovery.
 */
package quietband.window.bench;
