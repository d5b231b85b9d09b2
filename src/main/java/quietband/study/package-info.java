/**
 * What a command asks is run here, room by room, and one finished result handed to {@code report} or {@code window}.
 *
 * <p>A study takes a model and what is asked of it, calls what works on a design, and keeps what came of it in a record: no report
 * works anything out again.
 */
package quietband.study;
