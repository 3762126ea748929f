/**
 * The shot list: setups, the views wanted of them, the states they go through, and the lists that
 * clients send.
 *
 * <p>The way through: bytes of a client's file become text (the encoding is found out or said),
 * text or a workbook that was looked over becomes a grid of cells that know their line and column,
 * within the limits of what a list may hold. A grid becomes a {@link
 * org.framewright.shotlist.ShotList} once its heading row is found, each heading is taken as
 * something ({@link org.framewright.shotlist.Column} says as what) and the lines below become
 * setups: mostly one each, several where they belong together. What a person says about all this is
 * {@link org.framewright.shotlist.ListOptions}; the words of headings in many languages are data,
 * {@code headings.properties}. Each setup is tried by a {@link org.framewright.shotlist.ListFit},
 * which whoever knows the names gives: this room knows none. What cannot be taken is a {@link
 * org.framewright.shotlist.ListProblem}, and a {@link org.framewright.shotlist.WayOn} says how it
 * may be read nevertheless. A {@link org.framewright.shotlist.ListChange} compares two lists by
 * setup code; {@link org.framewright.shotlist.ListWriter} writes a list that this reader reads as
 * the same one, and in which no spreadsheet runs anything.
 */
package org.framewright.shotlist;
