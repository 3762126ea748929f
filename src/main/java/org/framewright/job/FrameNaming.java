package org.framewright.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Kind;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;
import org.framewright.renaming.RenameRequest;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * Between frames and their names by the convention's kind {@code frame}. Each field of such a name
 * has one source: the job's own values; the setup (the field {@code setup} is its code, {@code
 * view} the view, any other the column of the shot list that is headed like the field); a choice
 * may be told by the folder that the frame lies in; a date is the frame's own, also where the job
 * has one, since a job may take days; a counter counts.
 */
final class FrameNaming {
  static final String VIEW = Reserved.VIEW;
  private static final String SETUP = Reserved.SETUP;
  static final String KIND = Reserved.FRAME;
  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}]");

  private final Convention convention;
  private final Map<String, String> values;
  private final ShotList list;
  private final Optional<Kind> kind;

  ShotList list() {
    return list;
  }

  /** The fields that say which setup a name belongs to. */
  private final List<String> telling = new ArrayList<>();

  private final Map<String, Setup> byCode = new HashMap<>();
  private final Map<List<String>, Setup> bySignature = new HashMap<>();

  /** Thousands of setups have the same few headings. */
  private final Map<String, String> plain = new ConcurrentHashMap<>();

  /** What names told already: a scan has the names of the one before, and some. */
  private final Map<String, Optional<Place>> told = new ConcurrentHashMap<>();

  FrameNaming(Convention convention, Map<String, String> values, ShotList list) {
    this.convention = convention;
    this.values = values;
    this.list = list;
    this.kind = Optional.ofNullable(convention.kinds().get(KIND));
    list.setups().forEach(setup -> byCode.put(setup.code(), setup));
    kind.ifPresent(this::learn);
  }

  private void learn(Kind frame) {
    for (var name : frame.fields().keySet()) {
      boolean told = list.setups().stream().anyMatch(setup -> ofSetup(setup, name).isPresent());
      if (told && !values.containsKey(name) && !isDate(name)) {
        telling.add(name);
      }
    }
    for (var setup : list.setups()) {
      var given = given(setup, Optional.empty());
      frame.counter().ifPresent(name -> given.put(name, "" + start(name)));
      for (var name : frame.fields().keySet()) {
        given.computeIfAbsent(name, other -> example(other, frame));
      }
      given.values().removeIf(String::isEmpty);
      if (convention.build(KIND, given) instanceof Built.Name name) {
        bySignature.putIfAbsent(signature(name.values()), setup);
      }
    }
  }

  private String example(String name, Kind frame) {
    // Nothing for what may be left out; any legal value for what may not and tells no setup.
    return frame.fields().get(name) && !telling.contains(name) ? field(name).example() : "";
  }

  private long start(String counter) {
    return Math.max(field(counter).start(), 0);
  }

  private Field field(String name) {
    return convention.fields().get(name);
  }

  private boolean isDate(String name) {
    return field(name).type() == FieldType.DATE;
  }

  private List<String> signature(Map<String, String> read) {
    return telling.stream().map(name -> read.getOrDefault(name, "")).toList();
  }

  private Optional<String> ofSetup(Setup setup, String field) {
    if (field.equals(SETUP)) {
      return Optional.of(setup.code());
    }
    if (field.equals(VIEW)) {
      return Optional.empty();
    }
    var wanted = plain(field);
    for (var column : setup.columns().entrySet()) {
      if (plain(column.getKey()).equals(wanted) && !column.getValue().isBlank()) {
        return Optional.of(column.getValue());
      }
    }
    return Optional.empty();
  }

  private String plain(String heading) {
    return plain.computeIfAbsent(
        heading, text -> NO_LETTER.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(""));
  }

  /** People's values for the fields of a frame's name that do not depend on the frame. */
  private SequencedMap<String, String> given(Setup setup, Optional<String> view) {
    var given = new LinkedHashMap<String, String>();
    for (var name : kind.orElseThrow().fields().keySet()) {
      if (isDate(name)) {
        continue; // When a frame was taken, the frame says best.
      }
      if (values.containsKey(name)) {
        given.put(name, values.get(name));
      } else if (name.equals(VIEW)) {
        view.ifPresent(code -> given.put(name, choice(code)));
      } else {
        ofSetup(setup, name).ifPresent(text -> given.put(name, text));
      }
    }
    return given;
  }

  /**
   * A choice that nothing else tells is told by the folder that the frame lies in, the nearest
   * first: cameras write into folders of their own, as do rooms.
   */
  private void addToldByFolders(Path folder, Map<String, String> given) {
    for (var name : kind.orElseThrow().fields().keySet()) {
      if (field(name).type() != FieldType.CHOICE || name.equals(VIEW)) {
        continue;
      }
      for (var at = folder; at != null && !given.containsKey(name); at = at.getParent()) {
        var called = at.getFileName().toString();
        field(name).choices().keySet().stream()
            .filter(called::equalsIgnoreCase)
            .findFirst()
            .ifPresent(choice -> given.put(name, choice));
      }
    }
  }

  /** The convention's own code for a view that the list calls by its meaning. */
  private String choice(String view) {
    return field(VIEW).choices().entrySet().stream()
        .filter(
            choice ->
                choice.getKey().equalsIgnoreCase(view) || choice.getValue().equalsIgnoreCase(view))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(view);
  }

  /** The setup and view that a frame's name tells, if it is one of this convention. */
  Optional<Place> place(Frame frame) {
    return told.computeIfAbsent(frame.stem(), stem -> read(frame).flatMap(this::place));
  }

  private Optional<SequencedMap<String, String>> read(Frame frame) {
    return kind.isPresent() && convention.read(frame.stem(), KIND) instanceof Reading.One one
        ? Optional.of(one.fields())
        : Optional.empty();
  }

  private Optional<Place> place(Map<String, String> read) {
    if (telling.isEmpty()) {
      return Optional.empty();
    }
    return Optional.ofNullable(bySignature.get(signature(read)))
        .map(
            setup ->
                new Place(
                    setup.code(),
                    Optional.ofNullable(read.get(VIEW)).map(view -> viewOf(setup, view))));
  }

  private String viewOf(Setup setup, String read) {
    return setup.views().stream()
        .map(view -> view.code())
        .filter(code -> choice(code).equalsIgnoreCase(read))
        .findFirst()
        .orElse(read);
  }

  FrameNames names(Path root, FrameScan scan, Tally tally, FrameTimes times) {
    var requests = new ArrayList<RenameRequest>();
    var leftOut = new ArrayList<FrameNames.LeftOut>();
    if (kind.isEmpty()) {
      for (var frame : scan.frames()) {
        leftOut.add(
            new FrameNames.LeftOut(
                frame, "the convention has no names for frames", "Give it a pattern names.frame."));
      }
      return new FrameNames(requests, leftOut);
    }
    var unassigned = new HashMap<Frame, String>();
    tally.unassigned().forEach(one -> unassigned.put(one.frame(), one.why()));
    var counter = kind.get().counter();
    var numbering =
        counter.map(
            name -> convention.numbering(KIND, scan.frames().stream().map(Frame::stem).toList()));
    var inOrder =
        scan.frames().stream()
            .sorted(
                Comparator.comparing(times::order)
                    .thenComparing(Frame::stem)
                    .thenComparing(Frame::folder))
            .toList();
    var seen = new HashMap<FrameId, Frame>();
    for (var frame : inOrder) {
      var twin = frame.complete() ? seen.putIfAbsent(frame.id(), frame) : null;
      var place = tally.places().get(frame.id());
      var bar = bar(root, frame, twin, place, unassigned.getOrDefault(frame, "no setup claims it"));
      if (bar.isPresent()) {
        leftOut.add(bar.get());
        continue;
      }
      var given = given(byCode.get(place.setup()), place.view());
      addToldByFolders(root.relativize(frame.folder()), given);
      if (read(frame).filter(read -> right(read, given)).isPresent()) {
        requests.addAll(requests(root, frame, frame.stem()));
        continue;
      }
      for (var name : kind.get().fields().keySet()) {
        if (isDate(name)) {
          given.put(name, date(name, frame, times));
        }
      }
      counter.ifPresent(name -> given.put(name, "" + numbering.orElseThrow().next(given)));
      switch (convention.build(KIND, given)) {
        case Built.Name name -> requests.addAll(requests(root, frame, name.text()));
        case Built.Refused refused -> {
          Finding first = refused.findings().getFirst();
          leftOut.add(new FrameNames.LeftOut(frame, first.message(), first.remedy().orElse("")));
        }
      }
    }
    return new FrameNames(requests, leftOut);
  }

  /**
   * Why a frame gets no name; empty if nothing bars it.
   *
   * @param twin a frame before that it is a copy of; null if there is none
   * @param place where it belongs; null if it is not known
   * @param unassigned why it is not known
   */
  private Optional<FrameNames.LeftOut> bar(
      Path root, Frame frame, Frame twin, Place place, String unassigned) {
    if (twin != null) {
      var other = root.relativize(twin.folder().resolve(twin.stem()));
      return leftOut(frame, "it is a copy of " + other, "Keep one of the two.");
    }
    if (!frame.complete()) {
      return leftOut(frame, "it is not whole yet", "Wait until it has arrived, or copy it again.");
    }
    if (place == null) {
      return leftOut(frame, unassigned, "Move it to a setup.");
    }
    if (!byCode.containsKey(place.setup())) {
      return leftOut(
          frame,
          "its setup " + place.setup() + " is not in the shot list",
          "Move it to a setup of the list.");
    }
    return Optional.empty();
  }

  private static Optional<FrameNames.LeftOut> leftOut(Frame frame, String why, String remedy) {
    return Optional.of(new FrameNames.LeftOut(frame, why, remedy));
  }

  private String date(String name, Frame frame, FrameTimes times) {
    return times.known(frame) || !values.containsKey(name)
        ? times.local(frame).toString()
        : values.get(name);
  }

  /**
   * Whether a name says what it should. Its number stays, and so does a time that it took from the
   * frame: what is known of a body's clock may have become better since.
   */
  private boolean right(Map<String, String> read, Map<String, String> given) {
    var counter = kind.orElseThrow().counter();
    var wanted = new LinkedHashMap<>(given);
    read.forEach(
        (name, value) -> {
          if (counter.equals(Optional.of(name)) || isDate(name)) {
            wanted.putIfAbsent(name, value);
          }
        });
    return convention.build(KIND, wanted) instanceof Built.Name name && name.values().equals(read);
  }

  private static List<RenameRequest> requests(Path root, Frame frame, String stem) {
    var group = root.relativize(frame.folder().resolve(frame.stem())).toString();
    var requests = new ArrayList<RenameRequest>();
    for (var file : frame.files()) {
      var name = file.path().getFileName().toString();
      int dot = name.lastIndexOf('.');
      int end =
          name.regionMatches(true, 0, frame.stem() + ".", 0, frame.stem().length() + 1)
              ? frame.stem().length()
              : Math.max(dot, 0);
      requests.add(
          new RenameRequest(
              root.relativize(file.path()),
              root.relativize(file.path().resolveSibling(stem + name.substring(end))),
              group));
    }
    return requests;
  }
}
