/**
 * What the command filter is asked: digital filters ({@link FilterDesign}), networks of real parts ({@link NetworkDesign}), and a
 * correction trimmed from two runs ({@link TrimStudy}).
 */
package quietband.study.filter;
