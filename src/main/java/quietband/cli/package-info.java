/** The command line: one small class per command, no domain work in it. */
package quietband.cli;
