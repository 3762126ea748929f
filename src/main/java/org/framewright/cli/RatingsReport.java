package org.framewright.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.handoff.RatingSidecars;
import org.framewright.job.Job;

/** Writes ratings into sidecars and says what came of it. */
final class RatingsReport {
  private final Output output;

  RatingsReport(Output output) {
    this.output = output;
  }

  /** Writes them, or says only which would be written. */
  ExitStatus write(Job job, boolean preview) throws IOException {
    var planned = RatingSidecars.plan(job, job.scan());
    if (preview) {
      told(planned, List.of(), false);
      return ExitStatus.DONE;
    }
    RatingSidecars.Outcome outcome;
    try (var interruption = new Interruption()) {
      outcome = RatingSidecars.write(planned, Progress.until(interruption::cancelled));
    }
    told(outcome.written(), outcome.left(), true);
    if (outcome.cancelled()) {
      output.err().println("Interrupted; the same command goes on where it stopped.");
      return ExitStatus.FAILED;
    }
    return outcome.left().isEmpty() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON;
  }

  private void told(List<RatingSidecars.Planned> sidecars, List<Problem> left, boolean written)
      throws IOException {
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("written", written);
      document.put("sidecars", sidecars.stream().map(RatingsReport::json).toList());
      document.put("left", left.stream().map(RatingsReport::json).toList());
      output.write(document);
      return;
    }
    sidecars.forEach(
        one ->
            output
                .out()
                .println(
                    PlainText.line(one.sidecar().getFileName().toString())
                        + "  "
                        + one.rating()
                        + (one.isNew() ? "  new" : "")));
    output
        .out()
        .println(
            PlainText.counted(sidecars.size(), "sidecar")
                + (written ? " written" : " would be written"));
    left.forEach(output.err()::println);
  }

  private static Map<String, Object> json(RatingSidecars.Planned one) {
    var json = new LinkedHashMap<String, Object>();
    json.put("file", one.sidecar().toString());
    json.put("rating", one.rating());
    json.put("new", one.isNew());
    return json;
  }

  private static Map<String, Object> json(Problem one) {
    var json = new LinkedHashMap<String, Object>();
    json.put("file", one.where());
    json.put("message", one.what());
    json.put("remedy", one.remedy());
    return json;
  }
}
