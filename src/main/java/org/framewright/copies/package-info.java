/**
 * Copies of frames: on which disks they lie, and how more are made that can be trusted.
 *
 * <p>{@link org.framewright.copies.device.Volumes} tells which whole disk a folder lies on and
 * reads what that disk holds.
 */
package org.framewright.copies;
