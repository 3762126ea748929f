/**
 * Copies of frames: on which disks they lie, and how more are made that can be trusted.
 *
 * <p>{@link org.framewright.copies.device.Volumes} tells which whole disk a folder lies on and
 * reads what that disk holds.
 *
 * <p>The way of a copy: {@link org.framewright.copies.CopyPlan} lists a folder; {@code CopyTargets}
 * refuses places where copies would do harm, {@code CopyRuns} writes down in the job that a run
 * begins, and removes what a killed one left; {@link org.framewright.copies.Copier} reads each file
 * once and gives its pieces to a {@code CopyTarget} for each place, which writes, flushes, reads
 * back, compares, and gives the file its name by a move that replaces nothing. A {@link
 * org.framewright.copies.CopyReport} says what became of all, and the job's log keeps it.
 */
package org.framewright.copies;
