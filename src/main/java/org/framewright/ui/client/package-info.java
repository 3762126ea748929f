/**
 * The client's screen: a second window for a second display. It shows the same {@link
 * org.framewright.ui.session.JobView} as the board, but only what is the client's: the setup's
 * name, its last frame large, how far the day is, and what they agreed to. No note, no path, no
 * name of the crew, no reason for a pickup.
 */
package org.framewright.ui.client;
