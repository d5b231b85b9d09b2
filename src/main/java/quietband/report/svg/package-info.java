/**
 * Java two-dimensional graphics as SVG text, laid out with a font of known widths.
 */
package quietband.report.svg;
