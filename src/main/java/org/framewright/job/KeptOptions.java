package org.framewright.job;

import org.framewright.shotlist.ListOptions;

/**
 * What was chosen for a list.
 *
 * @param list the file's name; empty where it is not known any more
 */
record KeptOptions(ListOptions options, String list) {}
