/**
 * Writes a convention with its proof beside it.
 *
 * <p>The way through: the text goes, as one types and the newest last, to the core in the
 * background and comes back as a {@link org.framewright.ui.naming.Checked}: what is wrong and
 * where, the two sets of values that show it, and an example of each name. A finding leads to its
 * place in the text. Saving replaces the file durably, one write at a time, and refuses where
 * somebody else changed it; the page says saved once the write returned, and only of the text that
 * was written.
 */
package org.framewright.ui.naming;
