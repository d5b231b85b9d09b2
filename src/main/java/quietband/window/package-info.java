/**
 * A desktop window on a model file: change a value, see the band at once. What is worked on is a
 * {@link quietband.window.bench.EditingBench}, an immutable state without any widget: variants of the model's text with every step that
 * led there. A {@link quietband.window.work.WindowWorker} changes and computes it away from the event thread; the rest shows it. Start
 * at {@link quietband.window.OpenWindow}.
 */
package quietband.window;
