/**
 * What a job knows of a select, said in the words of the IPTC Photo Metadata Standard: as XMP
 * sidecars, and on request inside the copies of JPEG, TIFF and DNG. Knows nothing of packages; what
 * is changed here are copies, never a frame of the job.
 *
 * <p>The way through: {@link org.framewright.handoff.metadata.Studio} is what a person said once of
 * the own studio, read from the settings' file; {@link org.framewright.handoff.metadata.SelectData}
 * is what the job knows of one select. {@link org.framewright.handoff.metadata.Block} makes of both
 * a value for each {@link org.framewright.handoff.metadata.Property}. {@code Packet} is an XMP
 * packet as it was found, and {@code Merge} puts the block into it: whatever it does not know stays
 * as it was, and what somebody wrote wins unless {@link
 * org.framewright.handoff.metadata.MetadataOptions} says otherwise. {@link
 * org.framewright.handoff.metadata.Sidecar} makes a sidecar of it.
 *
 * <p>{@link org.framewright.handoff.metadata.PictureCopy} is a copy of a picture with the packet
 * and the older IIM data in it. A new packet becomes a {@code Rewriting}: stretches of the copy
 * that are kept, and new bytes between them; so that it can be proved, byte by byte, that nothing
 * else is different. A JPEG of which offsets could point behind the packet, a BigTIFF, and whatever
 * is not understood is left as it is, with the reason.
 *
 * <p>Packets come from anywhere. They are bounded in size and depth, and no document type is read.
 */
package org.framewright.handoff.metadata;
