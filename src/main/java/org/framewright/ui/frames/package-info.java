/**
 * The frames of a job in a grid: looked at by setup and view, moved to another setup, marked as
 * selects and handed off.
 *
 * <p>The way through: a scan of the frames folder is sorted in the background into a {@link
 * org.framewright.ui.frames.GroupedFrames}, tiles in the order of the list under headings; the page
 * shows those under one heading, with pictures that a loader reads as they come into sight. What
 * somebody marks or moves is written to the job's log first and shown when it is there.
 *
 * <p>A client's list is read in the background, the newest text last, into a {@link
 * org.framewright.ui.frames.ListReading}: each part with what it was taken for, and for what is
 * unclear the frames among which a person chooses. Once nothing is unclear, its frames are planned
 * and handed off as selects are.
 */
package org.framewright.ui.frames;
