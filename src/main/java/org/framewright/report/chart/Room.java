package org.framewright.report.chart;

/**
 * The room that a chart is drawn in.
 *
 * @param width in the units of who draws it
 * @param height in the same
 * @param size of its letters
 */
public record Room(double width, double height, double size) {}
