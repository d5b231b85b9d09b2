/**
 * The desktop window: menu, panels and questions around one state without widgets. The event thread only shows.
 * Main type: {@link quietband.window.MainWindow}.
 */
package quietband.window;
