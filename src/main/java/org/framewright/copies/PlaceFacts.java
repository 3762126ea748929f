package org.framewright.copies;

import java.util.List;
import org.framewright.copies.device.Device;

/**
 * What one run established about a place that may hold copies.
 *
 * @param folder as it was given
 * @param device what it lies on
 * @param card whether it is a card, lies on one, or is asked about itself
 * @param files those that were read, or should have been
 */
record PlaceFacts(String folder, Device device, boolean card, List<FileFacts> files) {}
