package org.framewright.shotlist;

import java.util.List;

/**
 * The rows of a list, and what was wrong with their form.
 *
 * @param form in words, such as {@code UTF-8, commas}
 * @param rows without the blank ones
 */
record Grid(String form, List<List<Cell>> rows, List<Fault> faults) {}
