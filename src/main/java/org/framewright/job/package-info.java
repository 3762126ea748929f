/**
 * The job folder, which is the whole truth about a job.
 *
 * <p>The way through: what people do becomes an {@link org.framewright.job.Event}, an {@link
 * org.framewright.job.EventLog} makes it durable before anything else happens, and the state is the
 * fold of all events of all stations, in the order of their stamps. Nothing else is kept: whoever
 * has the folder has the job. A {@code Folding} applies what is new and no more, so that a tick in
 * a long job costs as much as in a short one. A {@link org.framewright.job.Job} joins this with the
 * convention that was copied in when the job began and with the frames on the disk: its {@link
 * org.framewright.job.Standing} is the frames' count and the setups' states together, and {@link
 * org.framewright.job.FrameNames} are the names that frames are to have. A client's list is read
 * through the job: its convention tries each setup, and what a person chose for an earlier list
 * with the same headings is an event like any other. What a scanner reads finds its setup by {@link
 * org.framewright.job.SetupCodes}. The slates that are printed for a job bear the key that it got
 * when it began. A {@link org.framewright.job.SlateWatch} follows the slates among frames that come
 * in, a {@link org.framewright.job.SlateLooks} searches those that lie there; both keep what they
 * find in the log, by the frame, and an {@link org.framewright.frames.Attribution} makes places of
 * it, in the light of what people said.
 *
 * <p>A job folder may come from anywhere. Own files are read up to a stated size and never through
 * a link; a line of a log that is no event is left out with a warning that names its place; and an
 * event that is dated far ahead moves no clock. A job's folder appears with everything in it or not
 * at all, and where it is gone no write brings a part of it back.
 *
 * <p>Each station (a computer) only ever appends to a log of its own, so two of them on one shared
 * folder write at the same time and lose nothing. A stamp is a hybrid logical clock (Kulkarni,
 * Demirbas, Madappa, Avva and Leone, "Logical Physical Clocks", OPODIS 2014): an event that was
 * made by somebody who had seen another one is always ordered after it, however wrong the clocks
 * are, and the same events make the same state in whatever order their logs come in.
 *
 * <p>The logs may be kept in a store besides, which is a {@link org.framewright.job.NumberedLogs}:
 * a {@link org.framewright.job.JobMirror} sends what it lacks and brings what the folder lacks. The
 * folder is always written first, so that nothing waits for the store. {@link
 * org.framewright.job.JobLogs} says with which kind of log a job is opened.
 */
package org.framewright.job;
