/**
 * The shot list: setups, the views wanted of them, the states they go through, and the lists that
 * clients send.
 *
 * <p>The way through: bytes of a client's file become text (the encoding is found out), text
 * becomes a grid of cells that know their line and column, a grid becomes a {@link
 * org.framewright.shotlist.ShotList} once its heading row is found and each heading is taken as
 * something ({@link org.framewright.shotlist.Column} tells as what). What cannot be taken is a
 * {@link org.framewright.shotlist.Fault}. A {@link org.framewright.shotlist.ListChange} compares
 * two lists by setup code; {@link org.framewright.shotlist.ListWriter} writes a list that this
 * reader, or any spreadsheet, reads again.
 */
package org.framewright.shotlist;
