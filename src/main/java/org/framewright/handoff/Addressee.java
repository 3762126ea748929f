package org.framewright.handoff;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Problem;

/** Whom a package is for, and what it says to them. */
interface Addressee {
  HandOffRecord.To to();

  /** Why there is no package where a plan has no selects. */
  Problem nothing(HandOffPlan plan);

  /** A folder that the package must not lie in. */
  Optional<Path> notIn();

  /** The name under which a select is wanted back. */
  Optional<String> wantedBack(Select select);

  /** The frame's own file, by which its earlier names are known. */
  Path frame(Select select);

  /** The table of what is in the package. */
  String index(HandOffPlan plan, List<HandOffRecord.Entry> entries, ZoneId zone);

  /** The words for people. */
  String readme(HandOffPlan plan, List<HandOffRecord.Entry> entries, int number);

  /** What else lies beside the index. */
  List<ExtraPaper> papers();

  /** The bag's data on itself. */
  SequencedMap<String, String> about(HandOffPlan plan, int number, ZoneId zone);
}
