/**
 * What a person at a terminal sees beside the result: messages,
 * progress, failures as one message and a status.
 */
package quietband.cli.terminal;
