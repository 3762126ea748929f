/**
 * Copies: which places hold what, whether a card may be cleared, and how more copies are made.
 *
 * <p>The way through: a {@link org.framewright.ui.copies.CopiesScreen} shows what its model knows.
 * The model holds the places, asks the core to compare them or to copy, one piece of work at a time
 * and in the background, and folds what comes of it into answers, one a card, and into lines, one a
 * file. How far each place is reaches it by way of the newest only. What the job's log says of
 * earlier answers is shown until there is a new one.
 *
 * <p>What a person decides changes no answer: on how many disks each file has to be, that a damaged
 * file need not be kept, that a place is a card or a backup. It goes into the next request, and
 * until then the model says which answers do not hold any more.
 *
 * <p>A {@link org.framewright.ui.copies.CardWatch} looks every few seconds which cards are in the
 * computer, lists each once, and offers it; nothing on it is read before somebody asks. Which disks
 * and cards there are comes from {@link org.framewright.ui.copies.Disks}, so that tests need none.
 */
package org.framewright.ui.copies;
