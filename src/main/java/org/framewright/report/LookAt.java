package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;
import org.framewright.copies.FramesOnce;
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
    facts.once().flatMap(FramesOnce::saidOnce).ifPresent(look::add);
    facts.once().flatMap(FramesOnce::saidNotCompared).ifPresent(look::add);
    return Attention.shortened(look);
  }
}
