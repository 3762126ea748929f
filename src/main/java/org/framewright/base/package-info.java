/**
 * The ground floor: what every room needs and no room owns. It knows none of them.
 *
 * <p>Nothing runs through here. A room that writes a file of the job goes by {@link
 * org.framewright.base.DurableFiles}, which flushes, moves and flushes the folder, so that after a
 * crash the old file or the new one is there, whole. What is wrong is a {@link
 * org.framewright.base.Problem}, whoever found it; what a disk refuses becomes one in {@link
 * org.framewright.base.FileProblems}. Two names that some file system takes for one have one {@link
 * org.framewright.base.NameKey}; where a path leads behind links, {@link
 * org.framewright.base.RealPaths} knows. {@link org.framewright.base.PlainText} makes other
 * people's text safe to show in a line, {@link org.framewright.base.ByteSizes} writes sizes, and
 * {@link org.framewright.base.Sha256} checksums. A type moves in only when three rooms need it.
 */
package org.framewright.base;
