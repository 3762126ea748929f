/**
 * A disk for tests: a real folder behind a file system that records every change, fails one, or
 * stops as by a kill, while the program under test uses plain {@code java.nio.file} and knows
 * nothing of it.
 *
 * <p>{@link org.framewright.disk.Recording} is the way in. A call on one of its paths becomes a
 * {@link org.framewright.disk.DiskOp}, which may fail by a {@link org.framewright.disk.Fault}, or
 * be where the program is {@link org.framewright.disk.Killed}; what passes is done on the real
 * folder and then recorded. {@link org.framewright.disk.CutDisk} makes of the record what a power
 * cut may leave.
 *
 * <p>Out of sight is whatever does not pass through a path's provider: files written through {@link
 * java.nio.file.Path#toFile}, and native calls with a path's text.
 */
package org.framewright.disk;
