package org.framewright.job;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.frames.Tally;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Numbering;
import org.framewright.naming.Reading;
import org.framewright.renaming.RenameRequest;
import org.framewright.shotlist.Setup;

/** Makes the names of the frames of one scan, in the order in which they were taken. */
final class FrameNamer {
  private final Path root;
  private final Convention convention;
  private final FrameFields fields;
  private final Optional<FrameFields> slateFields;
  private final FrameNaming naming;
  private final Tally tally;
  private final FrameTimes times;
  private final Map<String, Setup> byCode = new HashMap<>();
  private final Map<Frame, Text> unassigned = new HashMap<>();
  private final Map<FrameId, SlateFrame> slates = new HashMap<>();
  private final Map<FrameId, Frame> first = new HashMap<>();
  private final Map<String, Integer> groups = new HashMap<>();
  private final List<RenameRequest> requests = new ArrayList<>();
  private final List<FrameNames.LeftOut> leftOut = new ArrayList<>();

  FrameNamer(
      Path root,
      Convention convention,
      FrameFields fields,
      Optional<FrameFields> slateFields,
      FrameNaming naming,
      Tally tally,
      FrameTimes times) {
    this.root = root;
    this.convention = convention;
    this.fields = fields;
    this.slateFields = slateFields;
    this.naming = naming;
    this.tally = tally;
    this.times = times;
    naming.list().setups().forEach(setup -> byCode.put(setup.code(), setup));
    tally.slates().frames().forEach(one -> slates.put(one.frame().id(), one));
    tally.unassigned().forEach(one -> unassigned.put(one.frame(), one.said()));
  }

  FrameNames names(FrameScan scan) {
    nameAll(scan);
    return new FrameNames(requests, leftOut);
  }

  /**
   * The name of a frame that comes after all those of a scan, once these have the names that they
   * are to have.
   *
   * @param folder where it will lie
   * @param at when it is taken
   */
  Built next(FrameScan scan, Setup setup, Optional<String> view, Path folder, LocalDateTime at) {
    var numbering = nameAll(scan);
    var given = fields.ofPeople(setup, view);
    fields.addFromFolders(root.relativize(folder), given);
    fields.names().stream().filter(fields::isDate).forEach(name -> given.put(name, at.toString()));
    fields.counter().ifPresent(name -> given.put(name, "" + numbering.orElseThrow().next(given)));
    return convention.build(FrameFields.KIND, given);
  }

  private Optional<Numbering> nameAll(FrameScan scan) {
    var numbering = numbering(fields, FrameFields.KIND, scan);
    var slateNumbering = slateFields.flatMap(of -> numbering(of, FrameFields.SLATE, scan));
    scan.frames().stream()
        .sorted(
            Comparator.comparing(times::order)
                .thenComparing(Frame::stem)
                .thenComparing(Frame::folder))
        .forEach(
            frame -> {
              var slate = frame.complete() ? slates.get(frame.id()) : null;
              if (slate == null) {
                name(frame, numbering);
              } else {
                slate(frame, slate.slate().says(), slateNumbering);
              }
            });
    return numbering;
  }

  private Optional<Numbering> numbering(FrameFields of, String kind, FrameScan scan) {
    return of.counter()
        .map(_ -> convention.numbering(kind, scan.frames().stream().map(Frame::stem).toList()));
  }

  /** A slate has a name of its own kind, or keeps the one that it has. */
  private void slate(Frame frame, SlateSays says, Optional<Numbering> numbering) {
    var setup = byCode.get(says.code());
    boolean ofSetup = says instanceof SlateSays.OfSetup && setup != null;
    if (!ofSetup || slateFields.isEmpty() || first.putIfAbsent(frame.id(), frame) != null) {
      request(frame, frame.stem());
      return;
    }
    var of = slateFields.get();
    var given = of.ofPeople(setup, Optional.empty());
    of.addFromFolders(root.relativize(frame.folder()), given);
    boolean right =
        convention.read(frame.stem(), FrameFields.SLATE) instanceof Reading.One one
            && isRight(of, FrameFields.SLATE, one.fields(), given);
    if (right) {
      request(frame, frame.stem());
      return;
    }
    switch (convention.build(FrameFields.SLATE, complete(of, given, frame, numbering))) {
      case Built.Name name -> request(frame, name.text());
      case Built.Refused _ -> request(frame, frame.stem());
    }
  }

  private void name(Frame frame, Optional<Numbering> numbering) {
    var twin = frame.complete() ? first.putIfAbsent(frame.id(), frame) : null;
    var place = tally.places().get(frame.id());
    var bar = bar(frame, Optional.ofNullable(twin), Optional.ofNullable(place));
    if (bar.isPresent()) {
      leftOut.add(bar.get());
      return;
    }
    var given = fields.ofPeople(byCode.get(place.setup()), place.view());
    fields.addFromFolders(root.relativize(frame.folder()), given);
    if (naming
        .read(frame)
        .filter(read -> isRight(fields, FrameFields.KIND, read, given))
        .isPresent()) {
      request(frame, frame.stem());
      return;
    }
    switch (convention.build(FrameFields.KIND, complete(fields, given, frame, numbering))) {
      case Built.Name name -> request(frame, name.text());
      case Built.Refused refused -> {
        var fault = refused.findings().getFirst();
        leftOut.add(new FrameNames.LeftOut(frame, fault.said(), fault.fix().orElse(Text.NONE)));
      }
    }
  }

  /** Adds what the frame itself says, and the next number. */
  private SequencedMap<String, String> complete(
      FrameFields of,
      SequencedMap<String, String> given,
      Frame frame,
      Optional<Numbering> numbering) {
    for (var name : of.names()) {
      if (of.isDate(name)) {
        given.put(name, date(name, frame));
      }
    }
    of.counter().ifPresent(name -> given.put(name, "" + numbering.orElseThrow().next(given)));
    return given;
  }

  /** Why a frame gets no name; empty if nothing bars it. */
  private Optional<FrameNames.LeftOut> bar(
      Frame frame, Optional<Frame> twin, Optional<Place> place) {
    if (twin.isPresent()) {
      var other = root.relativize(twin.get().folder().resolve(twin.get().stem()));
      return leftOut(frame, Text.of("it is a copy of {0}", other), Text.of("Keep one of the two."));
    }
    if (!frame.complete()) {
      return leftOut(
          frame,
          Text.of("it is not whole yet"),
          Text.of("Wait until it has arrived, or copy it again."));
    }
    if (place.isEmpty()) {
      return leftOut(
          frame,
          unassigned.getOrDefault(frame, Text.of("no setup claims it")),
          Text.of("Move it to a setup."));
    }
    if (!byCode.containsKey(place.get().setup())) {
      return leftOut(
          frame,
          Text.of("its setup {0} is not in the shot list", place.get().setup()),
          Text.of("Move it to a setup of the list."));
    }
    return Optional.empty();
  }

  private static Optional<FrameNames.LeftOut> leftOut(Frame frame, Text why, Text remedy) {
    return Optional.of(new FrameNames.LeftOut(frame, why, remedy));
  }

  private String date(String name, Frame frame) {
    var ofJob = fields.ofJob(name);
    return times.known(frame) || ofJob.isEmpty() ? times.local(frame).toString() : ofJob.get();
  }

  /**
   * Whether a name says what it should. Its number stays, and so does a time that it took from the
   * frame: what is known of a body's clock may have become better since.
   */
  private boolean isRight(
      FrameFields of, String kind, Map<String, String> read, Map<String, String> given) {
    var wanted = new LinkedHashMap<>(given);
    read.forEach(
        (name, value) -> {
          if (of.counter().equals(Optional.of(name)) || of.isDate(name)) {
            wanted.putIfAbsent(name, value);
          }
        });
    return convention.build(kind, wanted) instanceof Built.Name name && name.values().equals(read);
  }

  private void request(Frame frame, String stem) {
    var group = group(frame);
    for (var file : frame.files()) {
      requests.add(
          new RenameRequest(
              root.relativize(file.path()),
              root.relativize(file.path().resolveSibling(stem + frame.ending(file))),
              group));
    }
  }

  /** Names a frame's files together; names that are not UTF-8 may read alike and are told apart. */
  private String group(Frame frame) {
    var name = root.relativize(frame.folder().resolve(frame.stem())).toString();
    int before = groups.merge(name, 1, Integer::sum) - 1;
    return before == 0 ? name : name + " (" + (before + 1) + ")";
  }
}
