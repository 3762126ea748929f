/**
 * From rated frames to a package that a retoucher can check, and back.
 *
 * <p>The way through: a {@code Selection} says which frames are meant, by rating, by choice in the
 * job or by a client's list, which {@link org.framewright.handoff.ClientListReader} reads against
 * all names that the frames have or had (see {@link org.framewright.handoff.names}). {@code
 * SelectPlanner} and {@code SelectNames} give each its name by the convention, and let slates go
 * along where that is asked for; what cannot go is said in the {@link
 * org.framewright.handoff.HandOffPlan} before anything is written. {@code DeliveryRun} writes the
 * package: {@code Target} finds where it really is to be and refuses what would do harm, {@code
 * Draft} is the hidden folder beside it in which {@code Bag} copies the files, reads them again and
 * lists them, and the job's {@code HandOffRecords} remember it; {@link
 * org.framewright.handoff.PastHandOffs} tells what they say. The job's frames are only read. What
 * comes back is read against the records by {@link org.framewright.handoff.Returns}, which writes
 * nothing, and against what the client asks (see {@link org.framewright.handoff.spec}). {@link
 * org.framewright.handoff.ClientDelivery} makes a plan of it under the names for deliveries ({@code
 * DeliveryNames}), and the same {@code DeliveryRun} writes the client's package: what differs with
 * whom a package is for, its {@code Addressee} says. What lies beside the index besides, such as a
 * contact sheet, others make ({@link org.framewright.handoff.ExtraPaper}); it is written into the
 * draft as all else. Several packages of one plan are one run: what an interrupted one left is
 * looked for once, and serves all of them. Whether a package is whole, ours or anybody's, {@link
 * org.framewright.handoff.verify.OpenPackage} finds out.
 *
 * <p>What a kill or a power cut can leave. The record is written as begun, with the draft's path,
 * before the draft is made; so each draft is named by a record. Every file and folder of the
 * package is flushed, then the record says what is in it and that it takes its place, then one
 * rename gives it its place: so what lies at the target is whole, and has a record with its
 * checksums. Then the draft's folder goes and the record says delivered. The next hand-off of the
 * job, which holds the job's lock, finds where the last one stopped: {@code Unfinished} completes
 * the record of a package that is in its place, known by the checksum of its tag manifest, and
 * gives a draft up that is not: copies that lie beside the next packages are {@code Leftovers},
 * which it takes over where they are what their frames are, and the rest is removed. It removes
 * only a folder whose name and note are those of the record, and only where its lock says that
 * nobody writes it; all else it names and leaves. A number is given once: the record of an
 * interrupted hand-off stays.
 *
 * <p>The last rename replaces nothing, not even an empty folder, where the system has a no-replace
 * rename (Linux, macOS, Windows; see {@link org.framewright.renaming.NoReplaceMove} for the rest).
 * Reading a copy again finds what was written wrongly; that it reached the medium only the flush
 * says, and the disk that answers it.
 */
package org.framewright.handoff;
