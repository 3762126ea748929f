package org.framewright.renaming;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The first line of a journal.
 *
 * @param undoes the batch that it takes back; empty if none
 * @param volume the kind of volume that it was written on, {@code ext4}
 * @param home what distinguished the folder of journals from its copies when this one was written,
 *     see {@link Disk#home}; absent in journals of earlier versions
 * @param root the folder that all names lie below
 * @param folders absolute paths of the folders it works in
 */
record JournalHeader(
    String batch,
    Instant at,
    String undoes,
    Guarantee guarantee,
    String volume,
    Optional<String> home,
    Path root,
    List<Path> folders) {}
