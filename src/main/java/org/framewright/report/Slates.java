package org.framewright.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.slate.Slate;
import org.framewright.job.Job;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/** Slates to print: a card for each setup. */
public sealed interface Slates {
  /** They can be printed. */
  record Ready(Report report) implements Slates {}

  /** They cannot, as a whole. */
  record Refused(Problem problem) implements Slates {}

  /** The setups that slates are printed for if nobody says otherwise: all that were not dropped. */
  static List<Setup> wanted(Job job) {
    var state = job.state();
    return job.shotList().setups().stream()
        .filter(setup -> state.of(setup.code()).state() != SetupState.DROPPED)
        .toList();
  }

  /** Makes the cards of some setups. A job that has no key for its slates gets one. */
  static Slates of(Job job, List<Setup> setups, SlateSize size, Stationery stationery)
      throws IOException {
    if (setups.isEmpty()) {
      return new Refused(
          new Problem(
              Text.of("the shot list is empty, so there is nothing to print slates for"),
              job.name(),
              Text.of("Import a list first.")));
    }
    var key = job.slateKey();
    var cards = new ArrayList<SlateSection.Card>();
    var codes = new HashMap<String, Setup>();
    for (var setup : setups) {
      var slate = Slate.of(key, setup.code());
      var other = codes.putIfAbsent(slate.print(), setup);
      if (other != null) {
        return new Refused(
            new Problem(
                Text.of(
                    "the slates of setups {0} and {1} would have the same code",
                    other.code(), setup.code()),
                job.name(),
                Text.of("Give one of them another code.")));
      }
      cards.add(new SlateSection.Card(setup, slate));
    }
    var section = new SlateSection(job.name(), cards, size, stationery);
    return new Ready(new Report(section, stationery, job.zone(), 0));
  }
}
