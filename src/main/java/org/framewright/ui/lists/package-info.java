/**
 * A client's list on its way into the job: what its columns are, and what comes of it.
 *
 * <p>The way through: the {@link org.framewright.ui.lists.ListModel} has the file read in the
 * background, at first as an earlier list with its headings was, and shows the {@link
 * org.framewright.shotlist.ListReading}: each column with its first lines and what it was taken
 * for, and beside them what the list changes, or why it cannot be taken. Whatever a person says of
 * a column, of the sheet or of the encoding becomes {@link org.framewright.shotlist.ListOptions},
 * with which the file is read again; of many requests only the newest is shown. Nothing is written
 * until somebody takes the list: then the lines that are ticked go into the job, and with them what
 * was said, for the next list of the kind.
 */
package org.framewright.ui.lists;
