package org.framewright.job;

import java.util.UUID;
import org.framewright.base.PlainText;

/**
 * Another job of the same store.
 *
 * @param id what the store calls it
 * @param name as it was when it was written down
 */
public record OtherJob(UUID id, String name) {
  /** This as it may be shown, whoever wrote it into the log. */
  OtherJob shown() {
    return new OtherJob(id, PlainText.line(name));
  }
}
