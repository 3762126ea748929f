/**
 * The frames of a job in a grid: looked at by setup and view, moved to another setup and marked as
 * selects.
 *
 * <p>The way through: a scan of the frames folder is sorted in the background into a {@link
 * org.framewright.ui.frames.GroupedFrames}, tiles in the order of the list under headings; the page
 * shows those under one heading, with pictures that a loader reads as they come into sight. What
 * somebody marks or moves is written to the job's log first and shown when it is there. Why the
 * frame that the keys are on belongs where it does, and what a person says of it as a slate, is a
 * {@link org.framewright.ui.frames.SlateModel}'s.
 */
package org.framewright.ui.frames;
