package org.framewright.report;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * What is to be shot on the next day: in order, at about what time, with what the client changed.
 */
record NextSection(JobFacts facts, ReportOptions options) implements Section {
  /** Small enough to lie within no break. */
  private static final Duration INSTANT = Duration.ofMillis(1);

  private static final List<Text> HEADINGS =
      List.of(
          Text.of("About"),
          Text.of("Setup"),
          Text.of("What"),
          Text.of("Views"),
          Text.of("Frames"),
          Text.of("Minutes"),
          Text.of("Model"),
          Text.of("Rack"),
          Text.of("Note"));

  /** A line of the day's order. */
  private sealed interface Line {
    /** A setup, with when it begins and how long it takes where that can be told. */
    record Shoot(Setup setup, Optional<Instant> about, Optional<Duration> takes, List<Text> changes)
        implements Line {}

    /** A break. */
    record Pause(LocalTime from, LocalTime until) implements Line {}
  }

  /**
   * The next day.
   *
   * @param day its date
   * @param lines what fits into it
   * @param beyond setups that are left and do not fit, or are planned for later
   * @param removed setups that the client's list does not have any more
   */
  private record Plan(LocalDate day, List<Line> lines, List<Setup> beyond, List<Setup> removed) {
    List<Line.Shoot> shoots() {
      return lines.stream()
          .filter(Line.Shoot.class::isInstance)
          .map(Line.Shoot.class::cast)
          .toList();
    }
  }

  private Plan plan() {
    var next = nextDay();
    var changes = changes();
    var changed = new HashMap<String, List<Text>>();
    changes
        .added()
        .forEach(setup -> changed.put(setup.code(), List.of(Text.of("new on the list"))));
    changes.changed().forEach(one -> changed.put(one.after().code(), one.descriptions()));
    var hours = facts.summary().hours();
    var begin = next.atStartOfDay(hours.zone()).toInstant();
    var lines = new ArrayList<Line>();
    var beyond = new ArrayList<Setup>();
    var pauses = new ArrayList<>(hours.breaks());
    var work = Duration.ZERO;
    for (var setup : left()) {
      var planned = day(setup);
      boolean later =
          planned.filter(next::isBefore).isPresent() && facts.state(setup) != SetupState.PICKUP;
      var takes = facts.setupTimes().of(setup);
      var end = work.plus(takes.orElse(Duration.ZERO));
      if (later || (!lines.isEmpty() && end.compareTo(hours.length()) > 0)) {
        beyond.add(setup);
        continue;
      }
      var about = takes.isEmpty() ? Optional.<Instant>empty() : at(hours, begin, work);
      while (!pauses.isEmpty()
          && about
              .filter(
                  time ->
                      !time.atZone(hours.zone()).toLocalTime().isBefore(pauses.getFirst().until()))
              .isPresent()) {
        var pause = pauses.removeFirst();
        lines.add(new Line.Pause(pause.from(), pause.until()));
      }
      lines.add(new Line.Shoot(setup, about, takes, changed.getOrDefault(setup.code(), List.of())));
      work = end;
    }
    return new Plan(next, List.copyOf(lines), List.copyOf(beyond), changes.removed());
  }

  /** When that much of a day's work is done; at the end of a break rather than at its begin. */
  private static Optional<Instant> at(DayHours hours, Instant begin, Duration work) {
    return hours.after(begin, work.plus(INSTANT)).map(time -> time.minus(INSTANT));
  }

  /** What is not done, in the list's order. */
  private List<Setup> left() {
    var left = new ArrayList<Setup>();
    for (var setup : facts.setups()) {
      if (!facts.state(setup).done()) {
        left.add(setup);
      }
    }
    return List.copyOf(left);
  }

  /**
   * The first day after the report's for which the list plans something that is left; else the
   * next.
   */
  private LocalDate nextDay() {
    var tomorrow = facts.day().plusDays(1);
    return left().stream()
        .flatMap(setup -> day(setup).stream())
        .filter(day -> !day.isBefore(tomorrow))
        .min(LocalDate::compareTo)
        .orElse(tomorrow);
  }

  private static Optional<LocalDate> day(Setup setup) {
    try {
      return setup.day().map(text -> LocalDate.parse(text.strip()));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** What the list says otherwise than before the report's day; nothing if that was its first. */
  private ListChange changes() {
    var before =
        facts.job().listAt(facts.day().atStartOfDay(facts.zone()).toInstant().minusMillis(1));
    var now = facts.job().shotList();
    return before.setups().isEmpty()
        ? ListChange.between(now, now)
        : ListChange.between(before, now);
  }

  @Override
  public void write(Page page) {
    var plan = plan();
    var words = page.words();
    var html = page.html();
    page.begin(facts, options, Text.of("{0}", words.day(plan.day())));
    figures(page, plan);
    before(page, plan);
    page.heading(Text.of("In this order"));
    if (plan.shoots().isEmpty()) {
      page.paragraph(Text.of("Nothing is left to shoot."));
    } else {
      html.open("table");
      var headings = new ArrayList<>(HEADINGS);
      headings.add(Text.of("Done"));
      page.headings(headings, 8, 8, 24, 9, 8, 9, 11, 6, 12, 5);
      html.open("tbody");
      for (var line : plan.lines()) {
        switch (line) {
          case Line.Pause pause -> pause(page, pause, headings.size());
          case Line.Shoot shoot -> shoot(page, shoot);
        }
      }
      html.close().end();
    }
    beyond(page, plan);
    page.end();
  }

  private void figures(Page page, Plan plan) {
    var words = page.words();
    var shoots = plan.shoots();
    int frames = shoots.stream().mapToInt(one -> one.setup().wanted().orElse(0)).sum();
    page.html().open("div", "class", "figures");
    page.figure(words.number(shoots.size()), page.say(Text.of("setups on this day")));
    page.figure(
        frames == 0 ? "–" : words.number(frames), page.say(Text.of("frames wanted of them")));
    page.figure(words.time(facts.summary().hours().from()), page.say(Text.of("begin of work")));
    page.figure(
        end(plan).map(words::time).orElse("–"),
        page.say(
            end(plan).isPresent()
                ? Text.of("done at about, if it goes on as it did")
                : Text.of("end: too early to tell")));
    page.figure(words.number(plan.beyond().size()), page.say(Text.of("setups left for later")));
    page.html().end();
  }

  private Optional<Instant> end(Plan plan) {
    var hours = facts.summary().hours();
    var shoots = plan.shoots();
    if (shoots.isEmpty() || shoots.stream().anyMatch(one -> one.takes().isEmpty())) {
      return Optional.empty();
    }
    var work = shoots.stream().map(one -> one.takes().get()).reduce(Duration.ZERO, Duration::plus);
    return hours.after(plan.day().atStartOfDay(hours.zone()).toInstant(), work);
  }

  /** What is to be done before the first frame. */
  private void before(Page page, Plan plan) {
    var html = page.html();
    html.open("div", "class", "keep");
    page.heading(Text.of("Before the first frame"));
    html.open("ul", "class", "look");
    item(
        page,
        Text.of(
            "Go round once: cables, stands, hot lamps, mains power and water, exits. Local law, the"
                + " venue’s rules and the manuals come first; electrical and rigging work is for"
                + " qualified people."));
    item(page, Text.of("Set the clocks of all bodies to the computer’s."));
    var space = facts.summary().space();
    item(
        page,
        space.enough()
            ? Text.of("Look at the free space of the disk.")
            : Text.of("Make room: the disk does not hold the frames that are still planned."));
    var late =
        plan.shoots().stream()
            .filter(one -> day(one.setup()).filter(plan.day()::isAfter).isPresent())
            .map(one -> Html.line(one.setup().code()))
            .toList();
    if (!late.isEmpty()) {
      item(page, Text.of("Left over from earlier days: {0}", String.join(", ", late)));
    }
    var pickups =
        plan.shoots().stream()
            .filter(one -> facts.state(one.setup()) == SetupState.PICKUP)
            .map(one -> Html.line(one.setup().code()))
            .toList();
    if (!pickups.isEmpty()) {
      item(page, Text.of("To be shot again: {0}", String.join(", ", pickups)));
    }
    var changed =
        plan.shoots().stream()
            .filter(one -> !one.changes().isEmpty())
            .map(one -> Html.line(one.setup().code()))
            .toList();
    if (!changed.isEmpty()) {
      item(page, Text.of("Changed by the client’s list: {0}", String.join(", ", changed)));
    }
    if (!plan.removed().isEmpty()) {
      item(
          page,
          Text.of(
              "No longer on the list: {0}",
              String.join(
                  ", ", plan.removed().stream().map(one -> Html.line(one.code())).toList())));
    }
    html.close().end();
  }

  private static void item(Page page, Text text) {
    page.html().open("li");
    page.box();
    page.html().words(page.say(text)).end();
  }

  private static void pause(Page page, Line.Pause pause, int columns) {
    page.html().open("tr");
    page.html()
        .element(
            "td",
            page.say(
                Text.of(
                    "{0} to {1}, break",
                    page.words().time(pause.from()), page.words().time(pause.until()))),
            "class",
            "break",
            "colspan",
            "" + columns);
    page.html().end();
  }

  private void shoot(Page page, Line.Shoot shoot) {
    var html = page.html();
    var cells = cells(shoot, page.words());
    html.open("tr");
    html.element("td", cells.get(0), "class", "count");
    html.wordsIn("td", cells.get(1), "class", "code");
    html.open("td").words(cells.get(2));
    facts
        .standing()
        .state()
        .of(shoot.setup().code())
        .reason()
        .filter(_ -> facts.state(shoot.setup()) == SetupState.PICKUP)
        .ifPresent(
            reason ->
                html.wordsIn(
                    "p", page.say(Text.of("again: {0}", Html.line(reason))), "class", "changed"));
    for (var change : shoot.changes()) {
      html.wordsIn("p", page.say(Text.of("changed: {0}", change)), "class", "changed");
    }
    html.close();
    for (int i = 3; i < cells.size(); i++) {
      if (i == 4 || i == 5) {
        html.wordsIn("td", cells.get(i), "class", "count");
      } else {
        html.wordsIn("td", cells.get(i));
      }
    }
    html.open("td");
    page.box();
    html.close().end();
  }

  private List<String> cells(Line.Shoot shoot, Words words) {
    var setup = shoot.setup();
    int there = facts.frames(setup);
    var wanted = setup.wanted();
    return List.of(
        shoot.about().map(words::time).orElse("–"),
        setup.code(),
        setup.title(),
        String.join(
            " ",
            setup.views().stream().map(view -> view.toString().replace(':', '\u00a0')).toList()),
        there > 0
            ? DaySection.framesOf(there, wanted, words)
            : wanted.isPresent() ? words.number(wanted.getAsInt()) : "",
        shoot.takes().map(words::minutes).orElse("–"),
        setup.model().orElse(""),
        setup.rack().orElse(""),
        setup.note().orElse(""));
  }

  private void beyond(Page page, Plan plan) {
    if (plan.beyond().isEmpty()) {
      return;
    }
    var html = page.html();
    html.open("div", "class", "keep");
    page.heading(Text.of("Left for later"));
    html.wordsIn(
        "p",
        String.join(
            ", ", plan.beyond().stream().limit(40).map(one -> Html.line(one.code())).toList()));
    if (plan.beyond().size() > 40) {
      page.paragraph(Text.of("and {0} more", plan.beyond().size() - 40));
    }
    html.end();
  }

  @Override
  public List<Table> tables(Words words) {
    var plan = plan();
    var rows = new ArrayList<List<String>>();
    for (var shoot : plan.shoots()) {
      var row = new ArrayList<>(cells(shoot, words));
      row.add(String.join("; ", shoot.changes().stream().map(words::say).toList()));
      rows.add(List.copyOf(row));
    }
    var headings = new ArrayList<>(HEADINGS);
    headings.add(Text.of("Changed"));
    return List.of(
        new Table(Text.of("Next day"), headings, rows),
        new Table(
            Text.of("Left for later"),
            List.of(Text.of("Setup"), Text.of("What")),
            plan.beyond().stream().map(one -> List.of(one.code(), one.title())).toList()));
  }

  /** For tests: what each setup of the day is about to begin at. */
  Map<String, Instant> begins() {
    var begins = new java.util.LinkedHashMap<String, Instant>();
    plan()
        .shoots()
        .forEach(one -> one.about().ifPresent(time -> begins.put(one.setup().code(), time)));
    return begins;
  }
}
