/**
 * Groups of options that several commands share, and
 * the words in them turned into values with units.
 */
package quietband.cli.option;
