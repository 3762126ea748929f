/**
 * What lies below a folder: which whole disk, since when it is there, and what that disk really
 * holds.
 *
 * <p>Two folders are two copies only if they do not fail together, and a checksum speaks of a disk
 * only if the bytes came from it. {@link org.framewright.copies.device.Volumes} answers both, and
 * says {@code UNKNOWN} or {@code UNSURE} wherever it was not established.
 */
package org.framewright.copies.device;
