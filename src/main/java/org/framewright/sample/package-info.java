/**
 * The invented shoot: cameras that write real files, an invented label's shot list, and the days in
 * which they meet.
 *
 * <p>The way through: a {@link org.framewright.sample.SampleCamera} is given what stands before it
 * and the true time, and answers with the bytes of one frame: a JPEG with Exif, a raw-like TIFF
 * companion, and a sidecar where somebody rated it. Its own clock and its own file numbers go wrong
 * in the ways that clocks and file numbers do. The scenarios of this package put such frames into a
 * job folder and then go the same way as the commands do: the checks before the first frame, the
 * job's log, the counting of frames, the renames, the hand-off. A last day is shot without a cable,
 * with slates in its first pictures.
 */
package org.framewright.sample;
