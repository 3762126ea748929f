package org.framewright.job;

import java.util.List;
import org.framewright.naming.Finding;

/** What came of starting a job. */
public sealed interface Started {

  /** The job's folder is there. */
  record Opened(Job job) implements Started {}

  /** Nothing was written: the convention is not sound, or a value does not fit its field. */
  record Refused(List<Finding> findings) implements Started {
    public Refused {
      findings = List.copyOf(findings);
    }
  }
}
