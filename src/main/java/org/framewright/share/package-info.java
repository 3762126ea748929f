/**
 * A page of the job for phones, tablets and screens on the studio's network.
 *
 * <p>The way in: a {@link org.framewright.share.ShareServer} shows an {@link
 * org.framewright.share.Invitation} as a {@link org.framewright.share.QrCode}; the page makes its
 * key of the secret in it and pairs. From then on each request comes through the door, which looks
 * at host, origin, size, rate and signature, to the service. What somebody did is kept in the job
 * on the queue of the {@link org.framewright.live.LiveJob}, by the number that the device gave it:
 * kept, had already, a gap, or a clash, so that what is sent again is kept once.
 *
 * <p>The way out: each picture of the job is made JSON once for each {@link
 * org.framewright.share.Role}, and every stream, on its own thread, takes the newest one and writes
 * what changed since the one before. A reader that is slow misses what lies between; one that is
 * stuck is cut off. Pictures of frames go by tokens, from the small previews, coded anew.
 *
 * <p>What is served is a {@code Content}: a job, or the {@link org.framewright.share.LiveSets} of a
 * studio, whose page only shows. Devices, invitations, door and streams are the same for both.
 *
 * <p>Who is paired is kept in the user's settings, never in the job's folder. The page itself lies
 * beside these classes as resources.
 */
package org.framewright.share;
