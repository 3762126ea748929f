/**
 * Renames of many files at once that never lose one: planned, previewed, applied, journalled, taken
 * back.
 *
 * <p>The way through: {@link org.framewright.renaming.RenameRequest}s become a {@link
 * org.framewright.renaming.Plan} that is bound to the state it saw; a plan becomes a journal below
 * {@code .framewright/renames} and then, in two epochs, new names; the journal becomes an undo or,
 * after a crash, a recovery.
 */
package org.framewright.renaming;
