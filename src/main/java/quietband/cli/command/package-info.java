/**
 * One class for each command: reads options, calls one study, hands its result to a report, returns the status.
 * Nothing is computed here.
 */
package quietband.cli.command;
