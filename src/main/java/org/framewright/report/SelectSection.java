package org.framewright.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Text;
import org.framewright.handoff.Select;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.framewright.shotlist.Setup;

/**
 * The pictures of one package under the names that they have there, by setup in the list's order,
 * with running numbers that the sheet and the table share.
 *
 * @param titles of setups by code, in the list's order
 */
record SelectSection(
    Job job,
    JobState state,
    Instant now,
    SequencedMap<String, String> titles,
    List<Select> selects,
    Stationery stationery)
    implements Section {
  private static final List<Text> HEADINGS =
      List.of(
          Text.of("Number"),
          Text.of("Name"),
          Text.of("Setup"),
          Text.of("What"),
          Text.of("View"),
          Text.of("Rating"),
          Text.of("Approved by"),
          Text.of("Frame"));

  static SelectSection of(Job job, List<Select> selects, Stationery stationery) {
    var titles = new LinkedHashMap<String, String>();
    for (Setup setup : job.shotList().setups()) {
      titles.put(setup.code(), setup.title());
    }
    return new SelectSection(job, job.state(), job.now(), titles, selects, stationery);
  }

  /** The selects of each setup; last those of setups that the list does not have any more. */
  private SequencedMap<String, List<Select>> bySetup() {
    var grouped = new HashMap<String, List<Select>>();
    var codes = new ArrayList<>(titles.keySet());
    for (var select : selects) {
      var code = select.place().setup();
      if (grouped.computeIfAbsent(code, _ -> new ArrayList<>()).isEmpty()
          && !titles.containsKey(code)) {
        codes.add(code);
      }
      grouped.get(code).add(select);
    }
    var ordered = new LinkedHashMap<String, List<Select>>();
    for (var code : codes) {
      if (grouped.containsKey(code)) {
        ordered.put(code, grouped.get(code));
      }
    }
    return ordered;
  }

  @Override
  public void write(Page page) {
    var words = page.words();
    var setups = bySetup();
    page.begin(
        job.name(),
        ReportKind.SHEET,
        stationery,
        Text.of(
            "{0} of {1}, as of {2}",
            words.frames(selects.size()), words.setups(setups.size()), words.dayAndTime(now)));
    int number = 0;
    for (var setup : setups.entrySet()) {
      var cells = new ArrayList<Sheet.Cell>();
      for (var select : setup.getValue()) {
        cells.add(cell(words, select, ++number));
      }
      Sheet.write(
          page,
          Optional.of(Sheet.heading(setup.getKey(), titles.getOrDefault(setup.getKey(), ""))),
          Sheet.under(state.of(setup.getKey()), cells.size(), words),
          List.of(),
          cells);
    }
    page.end();
  }

  private Sheet.Cell cell(Words words, Select select, int number) {
    var code = select.place().setup();
    var which =
        words.say(Text.of("{0} of {1}", words.number(number), words.number(selects.size())));
    return new Sheet.Cell(
        select.frame(),
        words.say(Text.of("Frame {0} of setup {1}", Html.line(select.name()), Html.line(code))),
        select.slate()
            ? slate(words, code)
            : view(select).map(view -> code + " " + view).orElse(code),
        select.name(),
        false,
        Sheet.rating(select.rating())
            .map(rating -> words.say(Text.of("{0}, {1}", which, rating)))
            .orElse(which));
  }

  private static String slate(Words words, String code) {
    return words.say(Text.of("a slate, of {0}", Html.line(code)));
  }

  private Optional<String> view(Select select) {
    return select.place().view().map(job::viewLabel);
  }

  @Override
  public List<Table> tables(Words words) {
    var rows = new ArrayList<List<String>>();
    bySetup()
        .forEach(
            (code, ofSetup) -> {
              var approved = Sheet.approval(state.of(code), words).orElse("");
              for (var select : ofSetup) {
                rows.add(
                    List.of(
                        String.valueOf(rows.size() + 1),
                        select.name(),
                        code,
                        titles.getOrDefault(code, ""),
                        select.slate() ? slate(words, code) : view(select).orElse(""),
                        select.rating().isPresent() ? "" + select.rating().getAsInt() : "",
                        approved,
                        select.original()));
              }
            });
    return List.of(new Table(Text.of("Frames"), HEADINGS, rows));
  }
}
