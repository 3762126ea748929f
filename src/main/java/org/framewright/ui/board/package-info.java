/**
 * Run the list: what is on set with its last frames, how far the job is, and the lines. {@link
 * org.framewright.ui.board.Widths} shares a window's width among them.
 *
 * <p>The way through: each new {@link org.framewright.live.JobView} becomes plain {@link
 * org.framewright.ui.board.SetupRow}s in the {@link org.framewright.ui.board.BoardModel}, which
 * filters and groups them into lines and changes only the lines that differ. The view shows them. A
 * key becomes a command, the command a step, and the step comes back as the next picture of the job
 * once it is on the disk, and as a sentence in the foot line, see {@link
 * org.framewright.ui.page.StepWords}. When a job is opened the page comes in some pulses, its list
 * line by line, so that no pulse holds the interface for long.
 *
 * <p>Questions lie on the paper of the list, so that the picture is seen: who agrees is a {@link
 * org.framewright.ui.board.SignOffModel}, which the client's screen asks, too. The name that the
 * next frame will get comes from the job through a {@link org.framewright.ui.board.NextNameModel}.
 * What people said of setups comes with each picture of the job; a {@link
 * org.framewright.ui.board.CommentsModel} knows which of it nobody here has seen yet.
 */
package org.framewright.ui.board;
