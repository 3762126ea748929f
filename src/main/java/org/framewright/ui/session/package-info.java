/**
 * The open job on its way to the screens. A {@link org.framewright.ui.session.JobSession} follows a
 * {@link org.framewright.live.LiveJob} and brings its newest picture to the interface, with never
 * more than one waiting there. What a person does to the list is a {@link
 * org.framewright.ui.session.Step}, which is undone and done again as one.
 *
 * <p>Which of a setup's last frames somebody looks at is a {@link
 * org.framewright.ui.session.LookedAt}: one for the list's page and one for the client's screen.
 *
 * <p>What is wrong with the folder, and what another station did, take the same way; {@link
 * org.framewright.ui.session.Notices} puts the first into words for as long as it is so.
 */
package org.framewright.ui.session;
