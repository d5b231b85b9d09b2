/**
 * The command line: names the commands, turns what went wrong into one message and an exit status, and alone ends
 * the process. Main type: {@link quietband.cli.Quietband}.
 */
package quietband.cli;
