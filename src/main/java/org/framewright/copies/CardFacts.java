package org.framewright.copies;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.copies.device.Device;

/**
 * What one run established about a card.
 *
 * @param folder the folder that it was asked about by
 * @param device what it lies on
 * @param files every file that is no litter
 * @param troubles what of it could not be listed
 * @param change how a second listing at the end of the run differs; empty where it does not
 */
record CardFacts(
    String folder,
    Device device,
    List<FileFacts> files,
    List<Problem> troubles,
    Optional<String> change) {}
