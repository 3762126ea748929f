/**
 * The open job on its way to whoever looks at it: the app, the command line, a page on the studio's
 * network.
 *
 * <p>The way through: a {@link org.framewright.live.LiveJob} owns the job. Scans of the frame
 * watcher, what other stations write and changes that people make run in order on one thread, the
 * queue, and each ends in a new {@link org.framewright.live.JobView}, an immutable picture of the
 * job, which listeners get after the change is on the disk. A {@link org.framewright.live.Latest}
 * takes the newest of them to another thread, with never more than one waiting. What a client may
 * see of it is {@link org.framewright.live.ShownToClient}.
 */
package org.framewright.live;
