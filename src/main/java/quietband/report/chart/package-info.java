/**
 * Charts over frequency, over time and over two quantities, in one look.
 *
 * <p>For other rooms: {@link quietband.report.chart.ChartStyle}, {@link quietband.report.chart.ChartFrame},
 * {@link quietband.report.chart.TradeAxis}.
 */
package quietband.report.chart;
