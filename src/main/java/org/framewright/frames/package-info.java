/**
 * Frames as they lie on the disk: which there are, whether they are whole, when and by which body
 * they were taken, and which setup they belong to.
 *
 * <p>The data's way: {@link org.framewright.frames.FrameScanner} walks the frames folder, gathers
 * the files of one stem into one {@link org.framewright.frames.Frame}, pictures and clips with all
 * companions that bear their name, and for each picture or clip whose size and time have held asks
 * its container whether it is whole and when it was taken; what was once read is kept until the
 * file changes, so that a second scan costs no more than a listing. What is neither a frame's file
 * nor litter of a system becomes {@link org.framewright.frames.NotUnderstood}, so that nothing is
 * passed over in silence. {@link org.framewright.frames.FrameWatcher} repeats the scan whenever the
 * folder stirs and hands each new {@link org.framewright.frames.FrameScan} on. {@link
 * org.framewright.frames.Attribution}, a pure function, joins a scan with what the job knows
 * (arrivals, what was on set when, slates, frames moved by a person) and makes the {@link
 * org.framewright.frames.Tally}, in which copies of one frame count once, and slates not at all.
 * Slates place the frames of their own body, in the order in which {@code BodyOrder} finds that
 * they were taken, whatever the clocks say; who has precedence, {@code Attribution} says. {@link
 * org.framewright.frames.Thumbnails} decodes the small previews that the containers carry, {@link
 * org.framewright.frames.FinishedPictures} whole pictures as somebody sends them back. {@link
 * org.framewright.frames.SlateSearch} chooses the picture of a frame in which a slate is looked
 * for, and {@link org.framewright.frames.SlateQueue} looks at new frames out of the watcher's way,
 * the newest first and those inside a burst last. {@link org.framewright.frames.PictureHeader} says
 * size, depth, colours, profile and layers of one file that came back, each kind by a reader of its
 * own. Every byte that is read counts as untrusted: readers are bounded, and what is broken becomes
 * a {@link org.framewright.base.Problem} of the scan, never its end.
 */
package org.framewright.frames;
