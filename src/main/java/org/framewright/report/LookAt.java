package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;
import org.framewright.day.Attention;

/** What somebody should look at before the job goes on, a sentence each. */
final class LookAt {
  private LookAt() {}

  static List<Text> of(JobFacts facts) {
    var look = new ArrayList<Text>();
    var attention =
        Attention.of(facts.job().shotList(), facts.standing().state(), facts.standing().tally());
    look.addAll(Attention.said(attention, Html::line, facts.job()::viewLabel));
    if (!facts.summary().space().enough()) {
      look.add(Text.of("the disk does not hold the frames that are still planned"));
    }
    copies(facts, look);
    return Attention.shortened(look);
  }

  private static void copies(JobFacts facts, List<Text> look) {
    facts
        .once()
        .ifPresent(
            once -> {
              if (once.once() > 0) {
                look.add(
                    Text.counted(
                        "{0} frame is on one disk only",
                        "{0} frames are on one disk only", once.once()));
              }
              if (once.notCompared() > 0) {
                look.add(
                    Text.counted(
                        "{0} frame was not compared with its copies",
                        "{0} frames were not compared with their copies", once.notCompared()));
              }
            });
  }
}
