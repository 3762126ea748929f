package org.framewright.ui.day;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.copies.FramesOnce;
import org.framewright.day.Attention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.day.LookLine.Group;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.ViewWords;

/** What to look at before one wraps, each with where one goes about it; what is well comes last. */
final class LookLines {
  private final DayNow now;
  private final Texts texts;
  private final ViewWords views;
  private final LocalDate today;
  private final List<LookLine> lines = new ArrayList<>();

  LookLines(DayNow now, Texts texts, ViewWords views, LocalDate today) {
    this.now = now;
    this.texts = texts;
    this.views = views;
    this.today = today;
  }

  List<LookLine> all() {
    now.attention().forEach(this::add);
    space();
    copies();
    well();
    return lines.stream().sorted(Comparator.comparing(LookLine::group)).toList();
  }

  private void add(Attention one) {
    switch (one) {
      case Attention.Pickup(var setup, _) ->
          ofSetup(one, Group.NEEDS, setup, new Way.OnTheList(setup.code()));
      case Attention.ViewsMissing(var setup, _) ->
          ofSetup(one, Group.NEEDS, setup, new Way.OnTheList(setup.code()));
      case Attention.Changed(var setup) ->
          ofSetup(one, Group.NEEDS, setup, new Way.ItsFrames(setup.code()));
      case Attention.Dropped(var setup, _) ->
          ofSetup(one, Group.JUDGE, setup, new Way.OnTheList(setup.code()));
      case Attention.Unassigned _ -> ofFrames(one, "day.more.loose", new Way.Loose());
      case Attention.SlateInDoubt _, Attention.SlateUnclear _ ->
          ofFrames(one, "day.more.slate", new Way.Slates());
      case Attention.Incomplete _ -> ofFrames(one, "day.more.incomplete", new Way.AllFrames());
      case Attention.ClockOff _, Attention.Implausible _ ->
          ofFrames(one, "day.more.clock", new Way.AllFrames());
    }
  }

  private void ofSetup(Attention one, Group group, Setup setup, Way way) {
    for (var text : one.said(PlainText::line, views::word)) {
      var what = texts.say(text);
      line(group, what, PlainText.line(setup.title()), Optional.of(way));
    }
  }

  private void ofFrames(Attention one, String more, Way way) {
    for (var text : one.said(PlainText::line, views::word)) {
      line(Group.JUDGE, texts.sentence(texts.say(text)), texts.get(more), Optional.of(way));
    }
  }

  private void space() {
    var space = now.summary().space();
    if (!space.enough()) {
      line(
          Group.NEEDS,
          texts.get(
              "day.look.noSpace",
              space.planned().orElseThrow(),
              texts.formats().size(space.needed().orElseThrow())),
          texts.get("day.more.noSpace", texts.formats().size(space.free())),
          Optional.of(new Way.Folder()));
    } else if (space.needed().isPresent() && space.planned().orElse(0) > 0) {
      line(
          Group.FINE,
          texts.get("day.look.space", space.planned().getAsLong()),
          "",
          Optional.empty());
    }
  }

  private void copies() {
    if (now.view().scan().distinct().isEmpty()) {
      return;
    }
    var way = Optional.<Way>of(new Way.Copies());
    if (now.once().isEmpty()) {
      line(Group.JUDGE, texts.get("day.look.neverCompared"), texts.get("day.more.compare"), way);
      return;
    }
    var once = now.once().get();
    var more = texts.get("day.more.asOf", asOf(once));
    if (once.once() > 0) {
      line(Group.NEEDS, texts.get("day.look.once", once.once()), more, way);
    }
    if (once.notCompared() > 0) {
      line(Group.JUDGE, texts.get("day.look.notCompared", once.notCompared()), more, way);
    }
    if (once.once() == 0 && once.notCompared() == 0) {
      line(Group.FINE, texts.get("day.look.twoDisks", once.frames()), more, way);
    }
  }

  private String asOf(FramesOnce once) {
    var at = LocalDateTime.ofInstant(once.at(), now.summary().hours().zone());
    return at.toLocalDate().equals(today) ? texts.formats().time(at) : texts.formats().soon(at);
  }

  private void well() {
    var tally = now.view().tally();
    if (tally.frames() > 0 && none(Attention.Unassigned.class)) {
      line(Group.FINE, texts.get("day.look.noLoose", tally.frames()), "", Optional.empty());
    }
    if (tally.frames() > 0 && none(Attention.Incomplete.class)) {
      line(Group.FINE, texts.get("day.look.whole", tally.frames()), "", Optional.empty());
    }
    if (!tally.cameras().isEmpty()
        && none(Attention.ClockOff.class)
        && none(Attention.Implausible.class)) {
      line(Group.FINE, texts.get("day.look.clocks", tally.cameras().size()), "", Optional.empty());
    }
    int done =
        now.summary().setups().getOrDefault(SetupState.SHOT, 0)
            + now.summary().setups().getOrDefault(SetupState.SIGNED_OFF, 0);
    if (done > 0 && none(Attention.ViewsMissing.class)) {
      line(Group.FINE, texts.get("day.look.views", done), "", Optional.empty());
    }
  }

  private boolean none(Class<? extends Attention> kind) {
    return now.attention().stream().noneMatch(kind::isInstance);
  }

  private void line(Group group, String what, String more, Optional<Way> way) {
    lines.add(new LookLine(group.word() + " " + what, group, what, more, way, false));
  }
}
