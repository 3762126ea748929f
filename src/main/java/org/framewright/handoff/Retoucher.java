package org.framewright.handoff;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.job.Job;

/**
 * Who gets the selects as they lie in the job, and sends them back.
 *
 * @param metadata where the package says what the job knows of the selects
 * @param papers what else lies beside the index
 */
record Retoucher(Job job, MetadataMode metadata, List<ExtraPaper> papers) implements Addressee {
  @Override
  public HandOffRecord.To to() {
    return HandOffRecord.To.RETOUCHER;
  }

  @Override
  public Problem nothing(HandOffPlan plan) {
    return new Problem(
        Text.of("there is nothing to hand off ({0})", plan.chosenBy()),
        "Rate frames, mark them as selects, or name them in a list.");
  }

  @Override
  public Optional<Path> notIn() {
    return Optional.empty();
  }

  @Override
  public Optional<String> wantedBack(Select select) {
    return select.slate() ? Optional.empty() : PackagePapers.retouched(job.convention(), select);
  }

  @Override
  public Path frame(Select select) {
    return select.frame().primary().path();
  }

  @Override
  public String index(HandOffPlan plan, List<HandOffRecord.Entry> entries, ZoneId zone) {
    return PackagePapers.index(plan, entries, zone);
  }

  @Override
  public String readme(HandOffPlan plan, List<HandOffRecord.Entry> entries, int number) {
    return PackagePapers.readme(job, plan, entries, number, metadata, papers);
  }

  @Override
  public SequencedMap<String, String> about(HandOffPlan plan, int number, ZoneId zone) {
    return PackagePapers.about(job, plan, number, zone);
  }
}
