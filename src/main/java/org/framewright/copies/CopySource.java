package org.framewright.copies;

import java.util.Map;
import org.framewright.copies.device.Reading;
import org.framewright.mhl.HashKind;

/**
 * A file that was read to be copied.
 *
 * @param reading what reading it gave
 * @param hashes those that the targets' ASC MHL need
 */
record CopySource(Reading reading, Map<HashKind, String> hashes) {}
