/**
 * Copies: which places hold what, whether a card may be cleared, and how more copies are made.
 *
 * <p>The way through: a {@link org.framewright.ui.copies.CopiesScreen} shows what its model knows.
 * The model holds the places, asks the core to compare them or to copy, one piece of work at a time
 * and in the background, and folds what comes of it into answers, one a card, and into lines, one a
 * file. How far each place is reaches it by way of the newest only. What the job's log says of
 * earlier answers is shown until there is a new one.
 *
 * <p>A {@link org.framewright.ui.copies.CardWatch} looks every few seconds which cards are in the
 * computer, lists each once, and offers it; nothing on it is read before somebody asks. Which disks
 * and cards there are comes from {@link org.framewright.ui.copies.Disks}, so that tests need none.
 */
package org.framewright.ui.copies;
