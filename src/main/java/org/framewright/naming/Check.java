package org.framewright.naming;

import java.util.ArrayList;
import java.util.List;

/** Proves a convention sound, or shows what is not. */
final class Check {
  private final Convention convention;
  private final List<Finding> findings = new ArrayList<>();

  Check(Convention convention) {
    this.convention = convention;
  }

  List<Finding> findings(long framesPlanned) {
    return framesPlanned < 0 || convention == null ? List.of() : List.copyOf(findings);
  }
}
