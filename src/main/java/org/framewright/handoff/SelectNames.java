package org.framewright.handoff;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.Place;
import org.framewright.handoff.verify.PayloadName;
import org.framewright.job.FieldColumns;
import org.framewright.job.Job;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Numbering;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/** The names that frames get as selects: from their own names, the job and the shot list. */
final class SelectNames {
  private static final String FRAME = Reserved.FRAME;

  private final Job job;
  private final Convention convention;
  private final Numbering numbering;
  private final FieldColumns columns = new FieldColumns();

  /**
   * @param handedOff the names that selects of this job had before; their numbers are not used
   *     again
   */
  SelectNames(Job job, List<String> handedOff) {
    this.job = job;
    this.convention = job.convention();
    this.numbering = convention.numbering(HandOff.SELECT, handedOff);
  }

  sealed interface Naming {}

  record Named(Select select) implements Naming {}

  record Unnameable(Withheld why) implements Naming {}

  Naming of(Frame frame, String original, Place place) {
    var values = new LinkedHashMap<>(job.values());
    switch (convention.read(frame.stem(), FRAME)) {
      case Reading.One one -> values.putAll(one.fields());
      case Reading.Several _ -> {
        return new Unnameable(
            new Withheld(
                original,
                "its name can be read in several ways",
                "Check the convention.",
                Withheld.Tool.CHECKING));
      }
      case Reading.None none -> {
        return new Unnameable(
            new Withheld(
                original, none.said(), "Rename the frames first.", Withheld.Tool.RENAMING));
      }
    }
    var select = convention.kinds().get(HandOff.SELECT);
    job.shotList()
        .setup(place.setup())
        .ifPresent(
            setup -> {
              // A field that the frame's name does not show may be a column of the shot list.
              for (var name : select.fields().keySet()) {
                columns
                    .value(setup, convention.fields().get(name))
                    .ifPresent(text -> values.putIfAbsent(name, text));
              }
            });
    select
        .counter()
        .filter(counter -> !values.containsKey(counter))
        .ifPresent(counter -> values.put(counter, String.valueOf(numbering.next(values))));
    return switch (convention.build(HandOff.SELECT, values)) {
      case Built.Name name -> named(frame, original, place, name);
      case Built.Refused refused ->
          new Unnameable(
              new Withheld(
                  new Problem(
                      refused.findings().stream()
                          .map(Finding::said)
                          .reduce((one, next) -> Text.of("{0}; {1}", one, next))
                          .orElse(Text.NONE),
                      original,
                      refused.findings().stream()
                          .flatMap(finding -> finding.fix().stream())
                          .findFirst()
                          .orElse(Text.NONE)),
                  Withheld.Tool.NONE));
    };
  }

  /** A slate keeps the name that it has in the job: its own, or that of the convention's kind. */
  Naming ofSlate(Frame frame, String original, String setup) {
    var name = frame.stem();
    var files = files(frame, name);
    if (!files.stream().allMatch(PayloadName::isFileName)) {
      return new Unnameable(
          new Withheld(
              original,
              Text.of("its name is no name of a file on every system: {0}", name),
              "Rename it in the file manager."));
    }
    var fields =
        convention.kinds().containsKey(Reserved.SLATE)
                && convention.read(name, Reserved.SLATE) instanceof Reading.One one
            ? one.fields()
            : new LinkedHashMap<String, String>();
    return new Named(
        new Select(
            frame,
            original,
            new Place(setup, Optional.empty()),
            job.state().rating(frame),
            name,
            fields,
            files,
            true));
  }

  private Naming named(Frame frame, String original, Place place, Built.Name name) {
    var files = files(frame, name.text());
    if (!files.stream().allMatch(PayloadName::isFileName)) {
      return new Unnameable(
          new Withheld(
              original,
              Text.of("its name as a select is no name of a file: {0}", name.text()),
              "Check the convention.",
              Withheld.Tool.CHECKING));
    }
    return new Named(
        new Select(
            frame, original, place, job.state().rating(frame), name.text(), name.values(), files));
  }

  /** Everything behind the frame's stem, so that {@code A.DNG.xmp} stays with {@code A.DNG}. */
  private static List<String> files(Frame frame, String name) {
    return frame.files().stream().map(file -> name + frame.ending(file)).toList();
  }
}
