/**
 * New names for many files: the plan as a table, old to new, and the batches that can be taken
 * back.
 *
 * <p>The way through: {@link org.framewright.ui.renaming.RenamesScreen} opens a folder with the
 * names that its files shall have; the model lets the core plan them in the background and folds
 * the plan into lines, one a frame, what is blocked first. Renaming, undo and recovery run as one
 * piece of work at a time; each ends in a sentence that says what happened and its remedy, and in a
 * fresh look at the folder, because what lies on the disk is the truth and not what was shown.
 */
package org.framewright.ui.renaming;
