/**
 * The charts of a day, told apart from what draws them.
 *
 * <p>The way through: what the day knows becomes the figures of one chart ({@code HoursChart},
 * {@code OnSetChart}); in a {@code Room} of some size and with {@code ChartWords} of some language
 * these become a {@code Chart}, a few shapes with what they show in a sentence. The report writes
 * them as SVG and prints them, the app draws them as nodes.
 */
package org.framewright.report.chart;
