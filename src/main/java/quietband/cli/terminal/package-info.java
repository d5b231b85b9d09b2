/**
 * What a person at a terminal sees beside the result: messages, progress, failures as one line and a status.
 */
package quietband.cli.terminal;
