package org.framewright.report;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.framewright.job.Comment;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/** How the day went: figures, charts, what to look at, what was shot. */
record DaySection(JobFacts facts, ReportOptions options) implements Section {
  private static final List<Text> HEADINGS =
      List.of(
          Text.of("Setup"),
          Text.of("What"),
          Text.of("Frames"),
          Text.of("Views"),
          Text.of("Done"),
          Text.of("Approved by"));

  private static final List<Text> COMMENT_HEADINGS =
      List.of(Text.of("Setup"), Text.of("Frame"), Text.of("Comment"), Text.of("By"), Text.of("At"));

  @Override
  public void write(Page page) {
    var words = page.words();
    var html = page.html();
    page.begin(
        facts,
        options,
        Text.of("{0}, as of {1}", words.day(facts.day()), words.near(facts.now(), facts.day())));
    figures(page);
    var charts = new DayCharts(facts, words);
    charts
        .states()
        .ifPresent(
            chart -> {
              html.open("div", "class", "keep");
              page.heading(Text.of("Where the setups stand"));
              page.chart(chart, 180);
              html.end();
            });
    charts(page, charts);
    onSet(page, charts);
    lookAt(page);
    comments(page);
    shot(page);
    page.end();
  }

  private void figures(Page page) {
    var words = page.words();
    var html = page.html();
    int today = facts.finishedOnDay().size();
    long frames =
        facts.frames().stream()
            .filter(one -> one.day().filter(facts.day()::equals).isPresent())
            .count();
    html.open("div", "class", "figures");
    page.figure(
        words.number(today),
        page.say(Text.of("finished on this day, {0} in all", words.number(facts.done()))));
    page.figure(
        words.number(frames),
        page.say(Text.of("frames on this day, {0} in all", words.number(facts.frames().size()))));
    page.figure(
        words.number(facts.count(SetupState.SIGNED_OFF)),
        page.say(Text.of("approved, of {0}", words.setups(facts.setups().size()))));
    page.figure(words.number(facts.summary().all().setups()), page.say(Text.of("left to shoot")));
    page.figure(
        facts.summary().pace().recent().map(words::minutes).orElse("–"),
        page.say(
            facts.summary().pace().mean().isPresent()
                ? Text.of(
                    "a setup lately, {0} on average",
                    words.minutes(facts.summary().pace().mean().get()))
                : Text.of("a setup: too early to tell")));
    html.end();
    html.open("p", "class", "lead").text(new DayCharts(facts, words).said());
    facts
        .summary()
        .all()
        .work()
        .filter(work -> work.compareTo(Duration.ZERO) > 0)
        .ifPresent(
            work ->
                html.text(" ")
                    .text(page.say(Text.of("That is {0} of work.", words.minutes(work)))));
    html.end();
  }

  private void charts(Page page, DayCharts charts) {
    var html = page.html();
    html.open("div", "class", "keep");
    html.open("div", "class", "half first");
    page.heading(Text.of("Finished by the hour"));
    var hours = charts.hours();
    page.chart(hours, 86);
    html.element("p", hours.said(), "class", "said");
    html.end();
    charts
        .progress()
        .ifPresent(
            chart -> {
              html.open("div", "class", "half");
              page.heading(Text.of("Done so far, and what is likely"));
              page.chart(chart, 86);
              html.element(
                  "p",
                  page.say(
                      Text.of(
                          "Setups done over the days; the area is where the rest is likely to"
                              + " end if it is like what was shot.")),
                  "class",
                  "said");
              html.end();
            });
    html.end();
  }

  private static void onSet(Page page, DayCharts charts) {
    charts
        .onSet()
        .ifPresent(
            chart -> {
              var html = page.html();
              html.open("div", "class", "keep");
              page.heading(Text.of("Time on set"));
              page.chart(chart, 180);
              html.element("p", charts.onSetSaid(), "class", "said");
              html.end();
            });
  }

  private void lookAt(Page page) {
    var html = page.html();
    var look = LookAt.of(facts);
    html.open("div", "class", "keep");
    page.heading(Text.of("To look at"));
    if (look.isEmpty()) {
      page.paragraph(Text.of("Nothing needs a look."));
    } else {
      html.open("ul", "class", "look");
      for (var one : look) {
        html.open("li");
        page.box();
        html.words(page.say(one)).end();
      }
      html.end();
    }
    html.element("p", copies(page.words()), "class", "said");
    html.end();
  }

  private String copies(Words words) {
    return facts
        .once()
        .map(
            once ->
                words.say(
                    once.once() == 0 && once.notCompared() == 0
                        ? Text.of(
                            "Copies: every frame is on two disks or more, as compared on {0}.",
                            words.dayAndTime(once.at()))
                        : Text.of(
                            "Copies: {0} of {1} are on two disks or more, as compared on {2}.",
                            words.number((long) once.frames() - once.once() - once.notCompared()),
                            words.frames(once.frames()),
                            words.dayAndTime(once.at()))))
        .orElseGet(() -> words.say(Text.of("Copies were not compared yet.")));
  }

  private List<Comment> commentsOnDay() {
    return facts.comments().stream().filter(comment -> facts.isOnDay(comment.at())).toList();
  }

  private void comments(Page page) {
    var said = commentsOnDay();
    if (said.isEmpty()) {
      return;
    }
    var html = page.html();
    page.heading(Text.of("Comments"));
    html.open("table");
    page.headings(COMMENT_HEADINGS, 9, 21, 43, 18, 9);
    html.open("tbody");
    for (var comment : said) {
      var cells = cells(comment, page.words());
      html.open("tr");
      html.wordsIn("td", cells.get(0), "class", "code");
      for (var cell : cells.subList(1, 4)) {
        html.wordsIn("td", cell);
      }
      html.wordsIn("td", cells.get(4), "class", "count");
      html.end();
    }
    html.close().end();
  }

  private List<String> cells(Comment comment, Words words) {
    return List.of(
        comment.setup(),
        facts.picture(comment).map(picture -> picture.name(facts.job())).orElse(""),
        comment.text(),
        comment.who().orElse(""),
        words.near(comment.at(), facts.day()));
  }

  private void shot(Page page) {
    var html = page.html();
    var finished = facts.finishedOnDay();
    page.heading(Text.of("What was shot"));
    if (finished.isEmpty()) {
      page.paragraph(Text.of("No setup was finished on this day."));
      return;
    }
    html.open("table");
    page.headings(HEADINGS, 9, 38, 11, 15, 9, 18);
    html.open("tbody");
    finished.forEach(
        (setup, time) -> {
          var cells = cells(setup, time, page.words());
          html.open("tr");
          html.wordsIn("td", cells.get(0), "class", "code");
          html.wordsIn("td", cells.get(1));
          html.wordsIn("td", cells.get(2), "class", "count");
          html.wordsIn("td", cells.get(3));
          html.wordsIn("td", cells.get(4), "class", "count");
          html.wordsIn("td", cells.get(5));
          html.end();
        });
    html.close().end();
  }

  private List<String> cells(Setup setup, Instant time, Words words) {
    var status = facts.standing().state().of(setup.code());
    var wanted = setup.wanted();
    return List.of(
        setup.code(),
        setup.title(),
        framesOf(facts.frames(setup), wanted, words),
        facts.views(setup),
        words.time(time),
        status.signedOffBy().isPresent() && status.signedOffAt().isPresent()
            ? words.say(
                Text.of(
                    "{0}, {1}",
                    Html.line(status.signedOffBy().get()),
                    words.near(status.signedOffAt().get(), facts.day())))
            : "");
  }

  static String framesOf(int frames, OptionalInt wanted, Words words) {
    return wanted.isPresent()
        ? words.say(Text.of("{0} of {1}", words.number(frames), words.number(wanted.getAsInt())))
        : words.number(frames);
  }

  @Override
  public List<Table> tables(Words words) {
    var shot = new ArrayList<List<String>>();
    facts.finishedOnDay().forEach((setup, time) -> shot.add(cells(setup, time, words)));
    var summary = facts.summary();
    var figures =
        Stream.of(
                row(words, Text.of("Day"), facts.day().toString()),
                row(words, Text.of("Finished on this day"), "" + facts.finishedOnDay().size()),
                row(words, Text.of("Finished in all"), "" + facts.done()),
                row(words, Text.of("Frames in all"), "" + facts.frames().size()),
                row(words, Text.of("Left to shoot"), "" + summary.all().setups()),
                row(
                    words,
                    Text.of("A setup, on average"),
                    summary.pace().mean().map(words::minutes).orElse("")),
                row(
                    words,
                    Text.of("A setup lately"),
                    summary.pace().recent().map(words::minutes).orElse("")),
                row(words, Text.of("How far"), new DayCharts(facts, words).said()),
                row(words, Text.of("Copies"), copies(words)))
            .toList();
    return List.of(
        new Table(Text.of("What was shot"), HEADINGS, shot),
        new Table(Text.of("Figures"), List.of(Text.of("Figure"), Text.of("Value")), figures),
        new Table(
            Text.of("To look at"),
            List.of(Text.of("To look at")),
            LookAt.of(facts).stream().map(one -> List.of(words.say(one))).toList()),
        new Table(
            Text.of("Comments"),
            COMMENT_HEADINGS,
            commentsOnDay().stream().map(comment -> cells(comment, words)).toList()));
  }

  private static List<String> row(Words words, Text name, String value) {
    return List.of(words.say(name), value);
  }
}
