/**
 * Which frames a client means: lists of names as people write them, in a text, a mail or a table.
 * Knows nothing of jobs; frames are numbers here.
 *
 * <p>The way through: {@code ListText} makes a file a text, {@code ListLines} says of each line
 * whether it asks for anything (a mail quotes older ones, has a head and a signature; a table has a
 * column of names), {@code Line} cuts it into {@code Token}s, units that are written in one, and
 * items between commas. {@code LineReader} looks for the longest runs of tokens that are a name of
 * a frame or a part of one in the {@code NameIndex}, and makes a {@link
 * org.framewright.handoff.names.Piece} of each: taken, with the reason; asked about, where several
 * frames fit; unknown, with the nearest; or passed over, and why. {@link
 * org.framewright.handoff.names.NamesRead} is all of it.
 *
 * <p>Nothing is guessed silently. A name that is written in one must fit as a whole; a number alone
 * counts only where a list of numbers stands, not in a sentence; numbers as long as those before
 * them go on with what stood before those ({@code IMG 1234, 1236-1240}).
 *
 * <p>A text may be hostile: each step is linear in it, but for looking for the nearest names, for
 * headings and for ranges, each of which ends at a stated sum for the whole list.
 */
package org.framewright.handoff.names;
