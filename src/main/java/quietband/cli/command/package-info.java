/**
 * One class for each command: options in, finished result out, status returned. No computation.
 */
package quietband.cli.command;
