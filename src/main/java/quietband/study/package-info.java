/**
 * What a command asks is run here, and one finished result handed to {@code report} or {@code window}.
 */
package quietband.study;
