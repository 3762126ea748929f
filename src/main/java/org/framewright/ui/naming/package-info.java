/**
 * Writes a convention with its proof beside it, or proposes one from names in use.
 *
 * <p>The way through writing: the text goes, as one types and the newest last, to the core in the
 * background and comes back as a {@link org.framewright.ui.naming.Checked}: what is wrong and
 * where, the two sets of values that show it, and an example of each name. A finding leads to its
 * place in the text. Saving replaces the file durably, one write at a time, and refuses where
 * somebody else changed it; the page says saved once the write returned, and only of the text that
 * was written.
 *
 * <p>The way through proposing: the names and what a person says of their pieces go, the newest
 * last, to the core in the background and come back as a {@link
 * org.framewright.ui.naming.Proposed}: the pieces, each example with where it differs, what is to
 * be asked, and the convention's text with what the check finds. What was said holds while the
 * names have as many pieces. Saving never replaces a file.
 */
package org.framewright.ui.naming;
