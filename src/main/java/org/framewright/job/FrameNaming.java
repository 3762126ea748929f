package org.framewright.job;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.ConcurrentHashMap;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;
import org.framewright.frames.slate.SlateSetups;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Reading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * Between frames and their names by the convention's kind {@code frame}: reads from a name which
 * setup it belongs to, and has names made, see {@link FrameNamer}. Safe for several threads.
 */
final class FrameNaming {
  private static final Text NO_PATTERN = Text.of("Give it a pattern names.frame.");

  private final Convention convention;
  private final ShotList list;
  private final SlateSetups slates;
  private final Optional<FrameFields> fields;
  private final Optional<FrameFields> slateFields;

  /** The fields that say which setup a name belongs to. */
  private final List<String> identifying = new ArrayList<>();

  private final Map<List<String>, Setup> bySignature = new HashMap<>();

  /** What names said already: a scan has the names of the one before, and some. */
  private final Map<String, Optional<Place>> places = new ConcurrentHashMap<>();

  FrameNaming(Convention convention, Map<String, String> values, ShotList list) {
    this.convention = convention;
    this.list = list;
    this.slates = new SlateSetups(list);
    this.fields =
        Optional.ofNullable(convention.kinds().get(FrameFields.KIND))
            .map(kind -> new FrameFields(convention, kind, values));
    this.slateFields =
        Optional.ofNullable(convention.kinds().get(FrameFields.SLATE))
            .map(kind -> new FrameFields(convention, kind, values));
    fields.ifPresent(this::learn);
  }

  ShotList list() {
    return list;
  }

  /** The setups by the codes that slates have for them. */
  SlateSetups slates() {
    return slates;
  }

  private void learn(FrameFields fields) {
    for (var name : fields.names()) {
      boolean inList =
          list.setups().stream().anyMatch(setup -> fields.ofSetup(setup, name).isPresent());
      if (inList && fields.ofJob(name).isEmpty() && !fields.isDate(name)) {
        identifying.add(name);
      }
    }
    for (var setup : list.setups()) {
      var given = fields.ofPeople(setup, Optional.empty());
      fields
          .counter()
          .ifPresent(name -> given.put(name, "" + Math.max(fields.field(name).start(), 0)));
      for (var name : fields.names()) {
        given.computeIfAbsent(name, other -> example(other, fields));
      }
      given.values().removeIf(String::isEmpty);
      if (convention.build(FrameFields.KIND, given) instanceof Built.Name name) {
        bySignature.putIfAbsent(signature(name.values()), setup);
      }
    }
  }

  private String example(String name, FrameFields fields) {
    // Nothing for what may be left out; any legal value for what may not and says no setup.
    return fields.isRequired(name) && !identifying.contains(name)
        ? fields.field(name).example()
        : "";
  }

  private List<String> signature(Map<String, String> read) {
    return identifying.stream().map(name -> read.getOrDefault(name, "")).toList();
  }

  /** The setup and view that a frame's name says, if it is one of this convention. */
  Optional<Place> place(Frame frame) {
    return places.computeIfAbsent(frame.stem(), _ -> read(frame).flatMap(this::place));
  }

  /** The fields of a frame's name, if it is one of this convention. */
  Optional<SequencedMap<String, String>> read(Frame frame) {
    return fields.isPresent()
            && convention.read(frame.stem(), FrameFields.KIND) instanceof Reading.One one
        ? Optional.of(one.fields())
        : Optional.empty();
  }

  private Optional<Place> place(Map<String, String> read) {
    if (identifying.isEmpty()) {
      return Optional.empty();
    }
    return Optional.ofNullable(bySignature.get(signature(read)))
        .map(
            setup ->
                new Place(
                    setup.code(),
                    Optional.ofNullable(read.get(ViewCodes.FIELD))
                        .map(view -> viewOf(setup, view))));
  }

  private String viewOf(Setup setup, String read) {
    return setup.views().stream()
        .map(view -> view.code())
        .filter(code -> fields.orElseThrow().choice(code).equalsIgnoreCase(read))
        .findFirst()
        .orElse(read);
  }

  /** The names that frames are to have; {@code root} is the job folder. */
  FrameNames names(Path root, FrameScan scan, Tally tally, FrameTimes times) {
    if (fields.isPresent()) {
      return namer(root, tally, times).names(scan);
    }
    return new FrameNames(
        List.of(),
        scan.frames().stream()
            .map(
                frame ->
                    new FrameNames.LeftOut(
                        frame, Text.of("the convention has no names for frames"), NO_PATTERN))
            .toList());
  }

  /**
   * The name of the next frame of a setup; {@code root} is the job folder, {@code folder} where the
   * frame will lie.
   */
  NextName next(
      Path root,
      FrameScan scan,
      Tally tally,
      FrameTimes times,
      Setup setup,
      Optional<String> view,
      Path folder,
      LocalDateTime at) {
    if (fields.isEmpty()) {
      return unknown(setup, Text.of("the convention has no names for frames"), NO_PATTERN);
    }
    var namer = namer(root, tally, times);
    return switch (namer.next(scan, setup, view, folder, at)) {
      case Built.Name name -> new NextName.Known(name.text());
      case Built.Refused refused -> {
        var fault = refused.findings().getFirst();
        yield unknown(setup, fault.said(), fault.fix().orElse(Text.NONE));
      }
    };
  }

  private FrameNamer namer(Path root, Tally tally, FrameTimes times) {
    return new FrameNamer(root, convention, fields.orElseThrow(), slateFields, this, tally, times);
  }

  private static NextName unknown(Setup setup, Text why, Text remedy) {
    return new NextName.Unknown(new Problem(why, "setup " + setup.code(), remedy));
  }
}
