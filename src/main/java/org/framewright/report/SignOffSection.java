package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.job.SignOff;

/**
 * Who approved what, and when: with the frames that were there, room for a signature, and a digest
 * of the log that proves it later.
 */
record SignOffSection(JobFacts facts, ReportOptions options) implements Section {
  private static final int MOST_NAMES = 60;
  private static final double SQUARE = 24;

  private static final List<Text> HEADINGS =
      List.of(
          Text.of("Setup"),
          Text.of("What"),
          Text.of("Approved by"),
          Text.of("At"),
          Text.of("Frames then"),
          Text.of("Came later"),
          Text.of("Moved away since"),
          Text.of("When not known"),
          Text.of("Not there any more"),
          Text.of("Names"),
          Text.of("SHA-256 of the log"),
          Text.of("Checked by"));

  @Override
  public void write(Page page) {
    var words = page.words();
    int frames = facts.signOffs().stream().mapToInt(one -> one.frames().size()).sum();
    page.begin(
        facts,
        options,
        Text.of(
            "{0} approved with {1}, as of {2}",
            words.setups(facts.signOffs().size()),
            words.frames(frames),
            words.dayAndTime(facts.now())));
    if (facts.signOffs().isEmpty()) {
      page.paragraph(Text.of("Nothing was approved yet."));
      page.end();
      return;
    }
    check(page);
    var signOffs = facts.signOffs();
    signOffs.subList(0, signOffs.size() - 1).forEach(one -> approval(page, one));
    // Nobody signs a page on which nothing stands that is approved.
    page.html().open("div", "class", "keep");
    approval(page, signOffs.getLast());
    signature(page);
    page.html().end();
    page.end();
  }

  private void approval(Page page, SignOff one) {
    var html = page.html();
    var words = page.words();
    html.open("div", "class", "approval");
    html.open("div", "class", "shown");
    if (!one.frames().isEmpty()) {
      var last = one.frames().getLast();
      page.picture(
          last,
          words.say(Text.of("The last frame before the approval: {0}", Html.line(name(last)))),
          SQUARE);
    }
    html.close();
    html.open("div", "class", "told");
    html.wordsIn("h2", one.setup().code() + "\u2002" + one.setup().title(), "style", "margin:0");
    html.open("p", "class", "approved");
    html.words(
        words.say(
            Text.of("Approved by {0}, {1}", Html.line(one.by()), words.dayAndTime(one.at()))));
    html.close();
    html.open("p", "class", "names");
    html.words(words.say(Text.of("With {0}:", words.frames(one.frames().size()))));
    html.text(" ");
    // Each name by itself: a line of them is longer than one text may be.
    var names = one.frames().stream().limit(MOST_NAMES).map(this::name).toList();
    for (int i = 0; i < names.size(); i++) {
      html.words(names.get(i)).text(i + 1 < names.size() ? ", " : "");
    }
    if (one.frames().size() > MOST_NAMES) {
      html.text(" ").text(words.say(Text.of("and {0} more", one.frames().size() - MOST_NAMES)));
    }
    html.close();
    if (one.later() > 0) {
      html.element(
          "p",
          words.say(
              Text.counted(
                  "{0} frame came later and is not part of this approval.",
                  "{0} frames came later and are not part of this approval.", one.later())),
          "class",
          "changed");
    }
    notAsThen(one, page);
    if (one.proof().isPresent()) {
      html.open("p", "class", "proof");
      html.text(one.proof().get().sha256()).empty("br").text(one.proof().get().command()).close();
    } else {
      html.element(
          "p",
          words.say(Text.of("The log that held this approval is not in the job any more.")),
          "class",
          "changed");
    }
    html.close().end();
  }

  /** What is not in the job as it was then, or nobody knows. */
  private static void notAsThen(SignOff one, Page page) {
    var told = new ArrayList<Text>();
    if (one.movedAway() > 0) {
      told.add(
          Text.counted(
              "{0} of these frames was moved to another setup since.",
              "{0} of these frames were moved to another setup since.", one.movedAway()));
    }
    if (one.timeless() > 0) {
      told.add(
          Text.counted(
              "Of {0} of these frames nobody knows when it came; it counts as there.",
              "Of {0} of these frames nobody knows when they came; they count as there.",
              one.timeless()));
    }
    if (one.notThere() > 0) {
      told.add(
          Text.counted(
              "{0} frame that had come by then is not in the job, or not as it was.",
              "{0} frames that had come by then are not in the job, or not as they were.",
              one.notThere()));
    }
    told.forEach(text -> page.html().element("p", page.say(text), "class", "changed"));
  }

  private String name(Frame frame) {
    return JobFacts.name(facts.job(), frame);
  }

  private static void signature(Page page) {
    var html = page.html();
    html.open("div", "class", "keep");
    page.heading(Text.of("Signature"));
    page.paragraph(
        Text.of("The approvals above are confirmed as they are printed here, for the client."));
    html.element("p", page.say(Text.of("Place and date")), "class", "sign");
    html.element("p", page.say(Text.of("Name")), "class", "sign");
    html.element("p", page.say(Text.of("Signature")), "class", "sign");
    html.end();
  }

  private static void check(Page page) {
    page.html()
        .element(
            "p",
            page.say(
                Text.of(
                    "Below each approval stands the SHA-256 of the job’s log up to the line that"
                        + " holds it, and the command that computes it again, in the job’s folder,"
                        + " on Linux; on macOS write “shasum -a 256” in place of “sha256sum”. The"
                        + " log is only ever added to, so the same number comes out however long"
                        + " the job goes on. If another comes out, somebody changed what was"
                        + " written before that approval.")),
            "class",
            "check");
  }

  @Override
  public List<Table> tables(Words words) {
    var rows = new ArrayList<List<String>>();
    for (var one : facts.signOffs()) {
      rows.add(
          List.of(
              one.setup().code(),
              one.setup().title(),
              one.by(),
              one.at().atZone(facts.zone()).toOffsetDateTime().toString(),
              "" + one.frames().size(),
              "" + one.later(),
              "" + one.movedAway(),
              "" + one.timeless(),
              "" + one.notThere(),
              one.frames().stream().map(this::name).collect(Collectors.joining(" ")),
              one.proof().map(proof -> proof.sha256()).orElse(""),
              one.proof().map(proof -> proof.command()).orElse("")));
    }
    return List.of(new Table(Text.of("Sign-offs"), HEADINGS, rows));
  }
}
