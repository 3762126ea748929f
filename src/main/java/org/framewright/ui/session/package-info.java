/**
 * The open job on its way to the screens. A {@link org.framewright.ui.session.JobSession} owns the
 * job; everything that reads or writes it happens in order on one thread, the queue. Scans of the
 * frame watcher and changes that people make each end in a new {@link
 * org.framewright.ui.session.JobView}, an immutable picture of the job, which is handed to the
 * interface after the change is on the disk, the newest only, with never more than one waiting.
 * What a person does to the list is a {@link org.framewright.ui.session.Step}, which is undone and
 * done again as one.
 *
 * <p>Which of a setup's last frames somebody looks at is a {@link
 * org.framewright.ui.session.LookedAt}: one for the list's page and one for the client's screen.
 *
 * <p>What is wrong with the folder, and what another station did, take the same way; {@link
 * org.framewright.ui.session.Notices} puts the first into words for as long as it is so.
 */
package org.framewright.ui.session;
