/**
 * Java two-dimensional graphics as SVG text, laid out with a font of known widths, so that a drawing is the same
 * bytes on every machine.
 *
 * <p>For other rooms: {@link quietband.report.svg.Svg}.
 */
package quietband.report.svg;
