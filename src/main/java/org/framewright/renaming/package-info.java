/**
 * Renames of many files at once that never lose one: planned, previewed, applied, journalled, taken
 * back. A small library that knows nothing of jobs.
 *
 * <p>The way through: {@link org.framewright.renaming.RenameRequest}s become a {@link
 * org.framewright.renaming.Plan} that is bound to the state it saw (number, size and time of each
 * file). An apply looks again, writes a journal below {@code .framewright/renames}, flushes it,
 * gives it its name, and only then changes names, in two epochs. The journal is what an undo reads,
 * as a new plan with the names exchanged, and what a recovery reads after a crash. An {@link
 * org.framewright.renaming.Outcome} or a {@link org.framewright.renaming.Recovery} says how it
 * went. Moves stay on one volume and below one root; within that, a file may go to another folder
 * that is there. Files of one group are renamed all or not at all; so is a batch.
 *
 * <h2>Why no file is lost</h2>
 *
 * <p><b>Nothing is overwritten.</b> Every call that changes a name of somebody's file refuses a
 * name that is taken, inside the kernel: no check precedes it that another program could outrun.
 * Where a volume has no such call, a hard link does the same; where it has no links either, the
 * name is first reserved with a marked file of our own, and the weaker promise is reported ({@link
 * org.framewright.renaming.Guarantee}).
 *
 * <p><b>Nothing is removed</b> but files of our own (journals that were never begun, marks of ours,
 * recognised by their whole content) and the second of two names of one file, after the system has
 * said that both are links of it and a listing has shown both spellings. A look-up would not do: a
 * volume that ignores case shows one file under two spellings.
 *
 * <p><b>Order does not matter where the disk may change it.</b> A rename is <em>conflicted</em> if
 * one of its names is, on any file system, also a name of another rename, or if its own two names
 * are one (a change of case). The first epoch takes conflicted files to names of their own; then
 * the folders are flushed; the second epoch takes every file to its target; then the folders are
 * flushed again. So within an epoch no name that is left is one that is taken. Of the changes of an
 * epoch, any subset may reach the disk in any order: each file still has exactly one of its names,
 * and no two files want one name. Swaps, cycles, chains and changes of case need no thought of
 * their own. Going back is the same, backwards.
 *
 * <p><b>Every reachable name is written down first.</b> The journal is on the disk, under its final
 * name, before the first rename. It is published by a rename, so a journal that is there is whole;
 * one that is damaged was damaged later, and is refused, never removed, never guessed at.
 *
 * <p><b>Recovery</b> flushes, lists the folders, finds each file by its exact name and its
 * identity, and decides before it moves anything: all at the new names, then it is done; else back;
 * else, if an old name was taken meanwhile, forward; else it stands still and names the files that
 * a person must look at. It reads nothing but the journal and the disk, so it may be interrupted
 * and begun again, any number of times.
 *
 * <p><b>A copy of the folder is the folder.</b> Where the journal was written, a file is recognised
 * by the volume's number of it, its size and its time. In a copy every number is another one, which
 * the number and age of the folder of journals show; there a file is recognised by its name and
 * size, by its hash if the journal has one (it has where the volume has no numbers), and by its
 * time, to two seconds, if the copy kept times at all. A file that contradicts what the journal saw
 * is left alone and reported; which of these it was is said ({@link
 * org.framewright.renaming.Evidence}). A recovery in a copy stands still where nothing shows which
 * of two files is which.
 *
 * <p><b>A journal is untrusted.</b> It may come with a folder from a stranger. Each line has a
 * checksum and all of them one more; every name in it must be one plain component, every folder a
 * real folder below the root, reached over no link, on the same volume; and a file is only moved if
 * it is the file that the journal describes. Checksums find damage, not malice: the confinement
 * holds for a journal that somebody wrote on purpose.
 *
 * <h2>What it rests on</h2>
 *
 * <p>That one rename is done or not done after a power cut (FAT and exFAT do not promise it), that
 * a flush is honest or the volume keeps the order of changes (Windows, servers), and that no other
 * program puts another folder in the place of one of the batch in the instant between the check and
 * the first rename. On Linux the folders are held open from then on, and no link is followed when
 * they are opened ({@code OpenFolders}); elsewhere they are found by path for each rename, so no
 * other program must replace one until the last. By {@link
 * org.framewright.renaming.Guarantee#LINKED} and {@link
 * org.framewright.renaming.Guarantee#RESERVED}, also that no other program writes to the same names
 * meanwhile; a crash within the reserving of a name may leave an empty or broken file, which is
 * never removed, but for one in the place of a journal that was not begun. {@code LINKED} also
 * rests on the order of its two changes. Where files have no stable number (exFAT, NTFS through
 * FUSE, Windows), identity is size, time and a hash of the first and last 64 KiB; two files alike
 * in all of that are taken to be exchangeable.
 *
 * <p>Linux is tested down to real power cuts of ext4 and xfs. The calls of macOS and Windows follow
 * their manual pages; on such a machine {@code mvn verify} runs the same tests, except those that
 * need strace or loop mounts, which say that they are skipped.
 */
package org.framewright.renaming;
