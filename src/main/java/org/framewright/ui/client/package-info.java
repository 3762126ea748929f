/**
 * The client's screen: a second window for a second display. It shows the same {@link
 * org.framewright.live.JobView} as the board, but only what is the client's: the setup's name, its
 * frames, its views, how far the job is, and what they agreed to. No note, no path, no name of the
 * crew, no reason for a pickup.
 *
 * <p>The way through: the model takes of each picture of the job what the client reads, and gives
 * its last frames to a {@link org.framewright.ui.session.LookedAt}, which knows whether somebody
 * went back to one. While the client is asked about a setup, that stays. The window asks and
 * listens to displays; the view knows neither.
 */
package org.framewright.ui.client;
