package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.framewright.frames.Place;
import org.framewright.job.Comment;
import org.framewright.job.SetupStatus;
import org.framewright.report.JobFacts.Picture;
import org.framewright.shotlist.Setup;

/** Every frame by setup: picture, view, name, whether it was chosen, its rating in words. */
record SheetSection(JobFacts facts, ReportOptions options) implements Section {
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
    var words = page.words();
    var cells = pictures.stream().map(picture -> cell(words, setup, picture)).toList();
    if (setup.isEmpty()) {
      Sheet.write(page, Optional.empty(), words.frames(pictures.size()), List.of(), cells);
    } else {
      var one = setup.get();
      Sheet.write(
          page,
          Optional.of(Sheet.heading(one.code(), one.title())),
          Sheet.under(status(one), pictures.size(), words),
          facts.comments(one).stream().map(comment -> said(words, comment)).toList(),
          cells);
    }
  }

  private String said(Words words, Comment comment) {
    var of = facts.picture(comment).map(picture -> Html.line(picture.name(facts.job())));
    var who =
        Stream.concat(comment.who().stream(), Stream.of(words.dayAndTime(comment.at())))
            .filter(part -> !part.isBlank())
            .map(Html::line)
            .collect(Collectors.joining(", "));
    return words.say(
        of.map(frame -> Text.of("{0}, of {1}: {2}", who, frame, Html.line(comment.text())))
            .orElseGet(() -> Text.of("{0}: {1}", who, Html.line(comment.text()))));
  }

  private SetupStatus status(Setup setup) {
    return facts.standing().state().of(setup.code());
  }

  private Sheet.Cell cell(Words words, Optional<Setup> setup, Picture picture) {
    return new Sheet.Cell(
        picture.frame(),
        said(words, setup, picture),
        setup.map(Setup::code).orElse("–") + view(picture).map(view -> " " + view).orElse(""),
        picture.name(facts.job()),
        picture.chosen(),
        Sheet.rating(picture.rating()).map(words::say).orElse(""));
  }

  private Optional<String> view(Picture picture) {
    return picture.place().flatMap(Place::view).map(code -> facts.job().viewLabel(code));
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
              var approved = setup.flatMap(one -> Sheet.approval(status(one), words)).orElse("");
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
