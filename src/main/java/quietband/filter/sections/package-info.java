/**
 * Second-order sections: the search for poles, and the numerators that suit them best.
 */
package quietband.filter.sections;
