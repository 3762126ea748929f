package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.Place;
import org.framewright.report.JobFacts.Picture;
import org.framewright.shotlist.Setup;

/** Every frame by setup: picture, view, name, whether it was chosen, its rating in words. */
record SheetSection(JobFacts facts, ReportOptions options) implements Section {
  private static final int ACROSS = 5;
  private static final double SQUARE = 33;

  private static final List<Text> HEADINGS =
      List.of(
          Text.of("Setup"),
          Text.of("What"),
          Text.of("View"),
          Text.of("Frame"),
          Text.of("Chosen"),
          Text.of("Rating"),
          Text.of("Approved by"));

  @Override
  public void write(Page page) {
    var words = page.words();
    page.begin(
        facts,
        options,
        Text.of(
            "{0} of {1}, as of {2}",
            words.frames(facts.frames().size()),
            words.setups(
                (int) facts.bySetup().keySet().stream().filter(Optional::isPresent).count()),
            words.dayAndTime(facts.now())));
    if (facts.frames().isEmpty()) {
      page.paragraph(Text.of("There are no frames yet."));
    }
    facts.bySetup().forEach((setup, pictures) -> setup(page, setup, pictures));
    if (facts.clips() > 0) {
      page.html()
          .element(
              "p",
              page.say(
                  Text.counted(
                      "{0} video clip is not shown here.",
                      "{0} video clips are not shown here.", facts.clips())),
              "class",
              "said");
    }
    page.end();
  }

  private void setup(Page page, Optional<Setup> setup, List<Picture> pictures) {
    var html = page.html();
    for (int i = 0; i < pictures.size(); i += ACROSS) {
      html.open("div", "class", "row");
      if (i == 0) {
        heading(page, setup, pictures.size());
      }
      for (var picture : pictures.subList(i, Math.min(pictures.size(), i + ACROSS))) {
        frame(page, setup, picture);
      }
      html.end();
    }
  }

  private void heading(Page page, Optional<Setup> setup, int frames) {
    var html = page.html();
    var words = page.words();
    html.open("div", "class", "setup");
    if (setup.isEmpty()) {
      page.heading(Text.of("Of no setup yet"));
      html.element("p", words.frames(frames), "class", "small");
    } else {
      html.wordsIn("h2", setup.get().code() + "\u2002" + setup.get().title());
      html.element("p", under(setup.get(), frames, words), "class", "small");
    }
    html.end();
  }

  private String under(Setup setup, int frames, Words words) {
    var count = words.frames(frames);
    return approval(setup, words)
        .map(approved -> words.say(Text.of("{0}. Approved by {1}", count, approved)))
        .orElseGet(() -> words.say(Text.of("{0}. {1}", count, words.state(facts.state(setup)))));
  }

  private Optional<String> approval(Setup setup, Words words) {
    var status = facts.standing().state().of(setup.code());
    return status
        .signedOffBy()
        .flatMap(
            by ->
                status
                    .signedOffAt()
                    .map(
                        at -> words.say(Text.of("{0}, {1}", Html.line(by), words.dayAndTime(at)))));
  }

  private void frame(Page page, Optional<Setup> setup, Picture picture) {
    var html = page.html();
    html.open("div", "class", "frame");
    page.picture(picture.frame(), said(page.words(), setup, picture), SQUARE);
    html.open("div", "class", "caption");
    html.open("p");
    html.wordsIn(
        "span",
        setup.map(Setup::code).orElse("–") + view(picture).map(view -> " " + view).orElse(""),
        "class",
        "view");
    html.close();
    html.wordsIn("p", picture.name(facts.job()), "class", "name");
    if (picture.chosen() || rating(picture).isPresent()) {
      html.open("p", "class", "marks");
      if (picture.chosen()) {
        html.element("span", page.say(Text.of("chosen")), "class", "mark").text(" ");
      }
      html.text(rating(picture).map(page::say).orElse(""));
      html.close();
    }
    html.close().close();
  }

  private Optional<String> view(Picture picture) {
    return picture.place().flatMap(Place::view).map(code -> facts.job().viewLabel(code));
  }

  private static Optional<Text> rating(Picture picture) {
    return picture.rating().isEmpty()
        ? Optional.empty()
        : Optional.of(
            picture.rating().getAsInt() < 0
                ? Text.of("rejected")
                : Text.of("rated {0}", picture.rating().getAsInt()));
  }

  private String said(Words words, Optional<Setup> setup, Picture picture) {
    return setup.isEmpty()
        ? words.say(Text.of("Frame {0}", Html.line(picture.name(facts.job()))))
        : words.say(
            Text.of(
                "Frame {0} of setup {1}",
                Html.line(picture.name(facts.job())), Html.line(setup.get().code())));
  }

  @Override
  public List<Table> tables(Words words) {
    var rows = new ArrayList<List<String>>();
    facts
        .bySetup()
        .forEach(
            (setup, pictures) -> {
              var approved = setup.flatMap(one -> approval(one, words)).orElse("");
              for (var picture : pictures) {
                rows.add(
                    List.of(
                        setup.map(Setup::code).orElse(""),
                        setup.map(Setup::title).orElse(""),
                        view(picture).orElse(""),
                        picture.name(facts.job()),
                        picture.chosen() ? words.say(Text.of("chosen")) : "",
                        picture.rating().isPresent() ? "" + picture.rating().getAsInt() : "",
                        approved));
              }
            });
    return List.of(new Table(Text.of("Frames"), HEADINGS, rows));
  }
}
