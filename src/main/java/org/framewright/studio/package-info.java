/**
 * Many sets on one PostgreSQL server: the store beside the job folders, and the overview of all
 * sets.
 *
 * <p>The way in: what a computer does to a job is in the job's folder first. A {@link
 * org.framewright.job.JobMirror} sends the very same lines to the {@link
 * org.framewright.studio.Store}, which answers by their numbers: kept, had, a gap, or a clash; and
 * it brings what others sent. That the server says by itself that something came is a hint; asking
 * by number, every few seconds, is what is relied on. One computer of each set tells how it stands,
 * a {@link org.framewright.studio.SetNow}, one row a set.
 *
 * <p>The way out: an {@link org.framewright.studio.Overview} reads these rows and the last numbers
 * of all logs, never an event, and sorts the sets by what needs a person. An {@link
 * org.framewright.studio.OverviewFollower} asks for it again and again while somebody looks, in
 * {@link org.framewright.studio.StoreRounds} like the {@link org.framewright.studio.SetFollower} of
 * an open job, which sees the frames as its {@link org.framewright.live.LiveJob} has them.
 *
 * <p>A setup goes from one set to another by an entry in a {@link org.framewright.studio.MoveBook},
 * whose steps are numbered over all moves of the setup: whoever says first what comes next is
 * right. The computers of both sets carry it out, each in the log of its own job: {@link
 * org.framewright.studio.SetMoves}.
 *
 * <p>What a job is found by goes the same way: {@link org.framewright.studio.SearchRows} tells a
 * row a setup and the ranges of its frames, and {@link org.framewright.studio.Search} looks for
 * words in the rows of all jobs.
 *
 * <p>The numbers of its days go that way, too: {@link org.framewright.studio.NumbersRows} tells a
 * row a day, and {@link org.framewright.studio.Numbers} reads those of all jobs, with the sums of
 * days and weeks.
 *
 * <p>To look at all of it first, a {@link org.framewright.studio.Trial} makes a server and invented
 * sets of its own, which go the same ways.
 *
 * <p>Where the store is and who this computer is there, with the password, is kept in the user's
 * settings only: {@link org.framewright.studio.StudioSettings}.
 */
package org.framewright.studio;
