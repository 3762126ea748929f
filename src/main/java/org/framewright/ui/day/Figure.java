package org.framewright.ui.day;

/**
 * One figure of the day.
 *
 * @param id stable, as in {@code shot}
 * @param word what it counts
 * @param number itself
 * @param below what belongs to it
 * @param needs whether somebody has to act on it
 */
record Figure(String id, String word, String number, String below, boolean needs) {}
