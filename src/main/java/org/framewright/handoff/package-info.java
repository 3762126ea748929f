/**
 * From rated frames to a package that a retoucher can check, and back.
 *
 * <p>The way through: the selects of a job are picked by rating or by a list of names, and each
 * gets its name from the convention; what cannot be named is said before anything is written. The
 * files are then copied into a folder beside the target, read again and compared, described by an
 * index and by checksums, and the finished folder is moved to its place. The job's own files are
 * only read. What comes back from the retoucher is read against the same list.
 */
package org.framewright.handoff;
