/**
 * Copies of frames: on which disks they lie, whether a card may be cleared, and how more copies are
 * made that can be trusted.
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
 *
 * <p>The way of a comparison: a {@link org.framewright.copies.Comparison} lists the folders that a
 * person gave, hidden files too, and reads every file of a card and, of the job and the backups,
 * what has the size of a file that matters; one thread reads one disk, by {@link
 * org.framewright.copies.device.Volumes}, which tells the whole disk of a folder and whether bytes
 * came from it. What was established becomes facts, and {@code Decision} makes of them, and of
 * nothing else, a {@link org.framewright.copies.Verdict}: each {@link org.framewright.copies.Rule}
 * has to be known to hold, and what is not known is not taken for true. Last, every file is looked
 * at once more.
 *
 * <p>Lists of checksums, ours and those of {@link org.framewright.mhl}, are claims: {@code Claims}
 * finds what contradicts them in what was read anyway, and nothing is ever believed because a list
 * says it. {@code TargetMhl} adds a generation to a target or a backup where a person asks.
 *
 * <p>The evidence, a line a file, is written into the job, then its event into the log, so that the
 * answer can be told later and a disk that was away since can be believed. Nothing else is written,
 * and nothing ever on a card. {@link org.framewright.copies.CopiesDescription} has the words.
 */
package org.framewright.copies;
