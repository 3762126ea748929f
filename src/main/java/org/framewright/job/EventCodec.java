package org.framewright.job;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;
import org.framewright.base.Text;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;

/**
 * One event as one line of JSON. The line's last member is {@code crc32c}, the checksum (RFC 3720,
 * Castagnoli) of all bytes before the comma that precedes it, in eight hexadecimal digits.
 *
 * <p>Anybody can write a line with the right checksum, so nothing is taken on trust: what is no
 * event is a {@link BadLine}, whatever it is.
 */
final class EventCodec {
  /** An event has four levels; a newer version may have some more. */
  private static final int DEEPEST = 32;

  private static final int LONGEST_NUMBER = 32;

  /** Far more than what a person calls a computer. */
  private static final int LONGEST_NAME = 1000;

  /** More than a station's name may have, see {@link Station}: it may have been made longer. */
  private static final Pattern STATION = Pattern.compile("[A-Za-z0-9][A-Za-z0-9-]{0,127}");

  private static final JsonMapper JSON =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxNumberLength(LONGEST_NUMBER)
                          // A line is bounded as a whole, and what was written must be readable.
                          .maxStringLength(LogTail.LONGEST_LINE)
                          .maxNameLength(LogTail.LONGEST_LINE)
                          .build())
                  // Names of columns are anybody's; a table of them must not grow for ever.
                  .disable(JsonFactory.Feature.CANONICALIZE_FIELD_NAMES)
                  .build())
          .build();
  private static final byte[] SEAL = ",\"crc32c\":\"".getBytes(StandardCharsets.US_ASCII);
  private static final int SEAL_LENGTH = SEAL.length + 8 + 2;

  private EventCodec() {}

  /** A line could not be read as an event. */
  static final class BadLine extends Exception {
    private static final long serialVersionUID = 1L;

    final transient Text why;

    BadLine(Text why) {
      super(why.english());
      this.why = why;
    }
  }

  /** A line as read; {@code afterTorn} if its writer found a torn line before it. */
  record Line(Entry entry, boolean afterTorn) {}

  /** The line without its line feed. */
  static byte[] encode(Line line) {
    var entry = line.entry();
    var json = JSON.createObjectNode();
    json.put("station", entry.stamp().station());
    json.put("number", entry.number());
    json.put("time", entry.stamp().instant().toString());
    json.put("count", entry.stamp().count());
    json.put("clock", entry.at().toString());
    if (line.afterTorn()) {
      json.put("afterTorn", true);
    }
    body(entry.event(), json);
    byte[] open;
    try {
      open = JSON.writeValueAsBytes(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
    int length = open.length - 1; // without the closing brace
    var seal = new String(SEAL, StandardCharsets.US_ASCII) + checksum(open, length) + "\"}";
    var sealed = Arrays.copyOf(open, length + SEAL_LENGTH);
    System.arraycopy(seal.getBytes(StandardCharsets.US_ASCII), 0, sealed, length, SEAL_LENGTH);
    return sealed;
  }

  private static void body(Event event, ObjectNode json) {
    switch (event) {
      case Event.Began began -> {
        json.put("type", "began");
        var values = json.putObject("values");
        began.values().forEach((name, value) -> values.put(text(name), text(value)));
      }
      case Event.ListChanged changed -> {
        json.put("type", "list-changed");
        var put = json.putArray("put");
        changed.put().forEach(setup -> write(setup, put.addObject()));
        var removed = json.putArray("removed");
        changed.removed().forEach(code -> removed.add(text(code)));
        var order = json.putArray("order");
        changed.order().forEach(code -> order.add(text(code)));
      }
      case Event.Marked marked -> {
        json.put("type", "marked");
        json.put("setup", text(marked.setup()));
        json.put("state", marked.state().word());
        marked.details().by().ifPresent(by -> json.put("by", text(by)));
        marked.details().view().ifPresent(view -> json.put("view", text(view)));
        marked.details().reason().ifPresent(reason -> json.put("reason", text(reason)));
        marked.slate().ifPresent(slate -> json.put("slate", text(slate.value())));
      }
      case Event.TakenBack taken -> {
        json.put("type", "taken-back");
        var of = json.putObject("event");
        of.put("station", taken.event().station());
        of.put("time", taken.event().instant().toString());
        of.put("count", taken.event().count());
      }
      case Event.Arrived arrived -> {
        json.put("type", "arrived");
        write(arrived.frames(), json);
      }
      case Event.LookedAt looked -> {
        json.put("type", "slates-read");
        var frames = json.putArray("looked");
        for (var one : looked.frames()) {
          var node = frames.addObject();
          node.put("frame", text(one.frame().value()));
          node.put("name", text(one.name()));
          one.slate().ifPresent(slate -> node.put("slate", text(slate)));
        }
      }
      case Event.SlateSaid said -> {
        json.put("type", "slate-said");
        write(said.word(), json);
        json.put("by", text(said.by()));
        write(said.frames(), json);
      }
      case Event.Commented commented -> {
        json.put("type", "commented");
        json.put("setup", text(commented.setup()));
        json.put("text", text(commented.text()));
        json.put("by", text(commented.by()));
        write(commented.frames(), json);
      }
      case Event.Moved moved -> {
        json.put("type", "moved");
        json.put("setup", text(moved.setup()));
        moved.view().ifPresent(view -> json.put("view", text(view)));
        json.put("by", text(moved.by()));
        write(moved.frames(), json);
      }
      case Event.Selected selected -> {
        json.put("type", "selected");
        json.put("selected", selected.selected());
        json.put("by", text(selected.by()));
        write(selected.frames(), json);
      }
      case Event.Rated rated -> {
        json.put("type", "rated");
        json.put("rating", rated.rating());
        json.put("by", text(rated.by()));
        write(rated.frames(), json);
      }
      case Event.Named named -> {
        json.put("type", "named");
        json.put("name", text(named.name()));
      }
      case Event.SlatesKeyed keyed -> {
        json.put("type", "slates-keyed");
        json.put("slates", keyed.key().text());
      }
      case Event.ItemTicked(var item, var ticked, var by) -> {
        json.put("type", "item-ticked");
        json.put("item", text(item));
        json.put("ticked", ticked);
        json.put("by", text(by));
      }
      case Event.ReadyAsked(var said) -> write(said, json);
      case Event.Given given -> {
        json.put("type", "given");
        json.put("move", given.move().toString());
        write(given.to(), json.putObject("to"));
        json.put("by", text(given.by()));
        write(given.what(), json.putObject("what"));
      }
      case Event.GiveEnded ended -> {
        json.put("type", "give-ended");
        json.put("move", ended.move().toString());
        json.put("arrived", ended.arrived());
      }
      case Event.Taken taken -> {
        json.put("type", "taken");
        json.put("move", taken.move().toString());
        json.put("setup", text(taken.code()));
        write(taken.from(), json.putObject("from"));
        write(taken.what(), json.putObject("what"));
      }
      case Event.Copied copied -> write(copied.copy(), json);
      case Event.Compared compared -> {
        json.put("type", "compared");
        ComparedJson.write(compared.found(), json);
      }
      case Event.ListRead read -> {
        json.put("type", "list-read");
        var headings = json.putArray("headings");
        read.headings().forEach(heading -> headings.add(text(heading)));
        var columns = json.putObject("columns");
        read.options().columns().forEach((field, name) -> columns.put(text(field), text(name)));
        if (!read.options().uses().isEmpty()) {
          var uses = json.putObject("uses");
          read.options()
              .uses()
              .forEach((name, use) -> uses.put(text(name), use.use().orElseThrow()));
        }
        if (!read.list().isEmpty()) {
          json.put("list", text(read.list()));
        }
        read.options().sheet().ifPresent(sheet -> json.put("sheet", text(sheet)));
        read.options().encoding().ifPresent(name -> json.put("encoding", text(name)));
        read.options().oneSetupPer().ifPresent(name -> json.put("oneSetupPer", text(name)));
      }
      case Event.Unknown unknown -> throw new IllegalArgumentException(unknown.type());
    }
  }

  private static void write(OtherJob job, ObjectNode json) {
    json.put("id", job.id().toString()).put("name", text(job.name()));
  }

  private static void write(MovedSetup moved, ObjectNode json) {
    write(moved.setup(), json.putObject("setup"));
    var notes = json.putArray("notes");
    for (var note : moved.notes()) {
      notes
          .addObject()
          .put("text", text(note.text()))
          .put("by", text(note.by()))
          .put("station", text(note.station()))
          .put("at", note.at().toString());
    }
    var codes = json.putObject("codes");
    moved.codes().forEach((job, code) -> codes.put(job.toString(), text(code)));
  }

  /** For {@link MovedSetup#json}. */
  static String json(MovedSetup moved) {
    var json = JSON.createObjectNode();
    write(moved, json);
    return json.toString();
  }

  /** For {@link MovedSetup#read}. */
  static Optional<MovedSetup> movedSetup(String text) {
    try {
      return Optional.of(movedSetup(JSON.readTree(text)));
    } catch (JsonProcessingException | Missing | DateTimeException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static MovedSetup movedSetup(JsonNode json) throws Missing {
    var notes = new ArrayList<MovedSetup.Note>();
    for (var note : json.path("notes")) {
      notes.add(
          new MovedSetup.Note(
              text(note, "text"), text(note, "by"), text(note, "station"), time(note, "at")));
    }
    var codes = new LinkedHashMap<UUID, String>();
    texts(json.path("codes")).forEach((job, code) -> codes.put(UUID.fromString(job), code));
    return new MovedSetup(setupOf(json.path("setup")), notes, codes);
  }

  private static OtherJob otherJob(JsonNode json) throws Missing {
    return new OtherJob(id(json, "id"), text(json, "name"));
  }

  private static UUID id(JsonNode json, String name) throws Missing {
    return UUID.fromString(text(json, name));
  }

  private static void write(SlateWord word, ObjectNode json) {
    json.put(
        "word",
        switch (word) {
          case SlateWord.OfSetup _ -> "slate";
          case SlateWord.NoSlate _ -> "none";
          case SlateWord.Backwards _ -> "backwards";
          case SlateWord.Follow _ -> "follow";
          case SlateWord.Stay _ -> "stay";
        });
    if (word instanceof SlateWord.OfSetup(var setup)) {
      json.put("setup", text(setup));
    } else if (word instanceof SlateWord.Follow(var onSet)) {
      onSet.ifPresent(setup -> json.put("setup", text(setup)));
    }
  }

  private static SlateWord word(JsonNode json) throws Missing {
    return switch (text(json, "word")) {
      case "slate" -> new SlateWord.OfSetup(setup(json));
      case "none" -> new SlateWord.NoSlate();
      case "backwards" -> new SlateWord.Backwards();
      case "follow" ->
          new SlateWord.Follow(optional(json, "setup").filter(setup -> !setup.isBlank()));
      case "stay" -> new SlateWord.Stay();
      default -> throw new Missing();
    };
  }

  private static List<FrameLook> looks(JsonNode json) throws Missing {
    if (!json.path("looked").isArray()) {
      throw new Missing();
    }
    var looks = new ArrayList<FrameLook>();
    for (var node : json.path("looked")) {
      looks.add(
          new FrameLook(
              new FrameId(text(node, "frame")), text(node, "name"), optional(node, "slate")));
    }
    return List.copyOf(looks);
  }

  private static void write(List<FrameId> frames, ObjectNode json) {
    var ids = json.putArray("frames");
    frames.forEach(frame -> ids.add(text(frame.value())));
  }

  private static void write(CopyRecord copy, ObjectNode json) {
    json.put("type", "copied");
    json.put("from", text(copy.from()));
    json.put("files", copy.files());
    json.put("bytes", copy.bytes());
    var to = json.putArray("to");
    for (var target : copy.to()) {
      to.addObject()
          .put("folder", text(target.folder()))
          .put("device", text(target.device()))
          .put("volume", text(target.volume()))
          .put("mount", text(target.mount()))
          .put("boot", text(target.boot()))
          .put("verified", target.verified())
          .put("unsure", target.unsure());
    }
  }

  private static void write(ReadyRecord said, ObjectNode json) {
    json.put("type", "ready-asked");
    json.put("of", said.wrap() ? "evening" : "morning");
    json.put("answer", text(said.answer()));
    var told = json.putArray("told");
    said.told().forEach(line -> told.add(text(line)));
    var rests = json.putObject("restsOn");
    said.restsOn().forEach((name, value) -> rests.put(text(name), text(value)));
  }

  private static ReadyRecord ready(JsonNode json) throws Missing {
    boolean wrap =
        switch (text(json, "of")) {
          case "morning" -> false;
          case "evening" -> true;
          default -> throw new Missing();
        };
    return new ReadyRecord(
        wrap, text(json, "answer"), list(json, "told"), texts(json.path("restsOn")));
  }

  private static CopyRecord copy(JsonNode json) throws Missing {
    var to = new ArrayList<CopyRecord.Target>();
    for (var target : json.path("to")) {
      to.add(
          new CopyRecord.Target(
              text(target, "folder"),
              text(target, "device"),
              text(target, "volume"),
              text(target, "mount"),
              text(target, "boot"),
              number(target, "verified").orElseThrow(Missing::new),
              number(target, "unsure").orElseThrow(Missing::new)));
    }
    var bytes = json.path("bytes");
    if (!bytes.canConvertToLong() || bytes.asLong() < 0) {
      throw new Missing();
    }
    return new CopyRecord(
        text(json, "from"), number(json, "files").orElseThrow(Missing::new), bytes.asLong(), to);
  }

  private static void write(Setup setup, ObjectNode json) {
    json.put("code", text(setup.code()));
    json.put("title", text(setup.title()));
    var views = json.putArray("views");
    for (var view : setup.views()) {
      var node = views.addObject().put("code", text(view.code()));
      view.frames().ifPresent(frames -> node.put("frames", frames));
    }
    setup.framesWanted().ifPresent(frames -> json.put("framesWanted", frames));
    var columns = json.putObject("columns");
    setup.columns().forEach((name, value) -> columns.put(text(name), text(value)));
  }

  /** Text with a stand-in for each half of a character, which UTF-8 cannot write. */
  static String text(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Character.isSurrogate(text.charAt(i))) {
        return new String(text.getBytes(StandardCharsets.UTF_16BE), StandardCharsets.UTF_16BE);
      }
    }
    return text;
  }

  /** The event of a line, given without its line feed. */
  static Line decode(byte[] line) throws BadLine {
    int length = line.length - SEAL_LENGTH;
    if (length < 1
        || !Arrays.equals(line, length, length + SEAL.length, SEAL, 0, SEAL.length)
        || !checksum(line, length)
            .equals(new String(line, length + SEAL.length, 8, StandardCharsets.US_ASCII))) {
      throw new BadLine(
          Text.of(
              hasNul(line)
                  ? "it has bytes that are no text"
                  : "its checksum does not fit its text"));
    }
    try {
      var json = JSON.readTree(line);
      var station = text(json, "station");
      if (!STATION.matcher(station).matches()) {
        throw new BadLine(Text.of("it comes from no station"));
      }
      var number = json.path("number");
      if (!number.canConvertToLong() || number.asLong() < 1 || number.asLong() == Long.MAX_VALUE) {
        throw new BadLine(Text.of("it has no number"));
      }
      var entry =
          new Entry(
              number.asLong(),
              stamp(json, station),
              time(json, "clock"),
              event(json, text(json, "type")));
      return new Line(entry, json.path("afterTorn").asBoolean());
    } catch (java.io.IOException | Missing | RuntimeException e) {
      // The last of them is what a line made to do harm may get out of a parser.
      throw new BadLine(Text.of("it is no event"));
    }
  }

  private static boolean hasNul(byte[] line) {
    for (var one : line) {
      if (one == 0) {
        return true;
      }
    }
    return false;
  }

  private static Event event(JsonNode json, String type) {
    try {
      return switch (type) {
        case "began" -> new Event.Began(texts(json.path("values")));
        case "slates-keyed" ->
            new Event.SlatesKeyed(JobKey.of(text(json, "slates")).orElseThrow(Missing::new));
        case "list-changed" ->
            new Event.ListChanged(
                setups(json.path("put")), list(json, "removed"), list(json, "order"));
        case "marked" ->
            new Event.Marked(
                setup(json),
                SetupState.of(text(json, "state")).orElseThrow(Missing::new),
                new MarkDetails(
                    optional(json, "by"), optional(json, "view"), optional(json, "reason")),
                optional(json, "slate").map(FrameId::new));
        case "taken-back" ->
            new Event.TakenBack(stamp(json.path("event"), text(json.path("event"), "station")));
        case "arrived" -> new Event.Arrived(frames(json));
        case "slates-read" -> new Event.LookedAt(looks(json));
        case "slate-said" -> new Event.SlateSaid(frames(json), word(json), text(json, "by"));
        case "commented" ->
            new Event.Commented(setup(json), frames(json), text(json, "text"), text(json, "by"));
        case "moved" ->
            new Event.Moved(frames(json), setup(json), optional(json, "view"), text(json, "by"));
        case "selected" ->
            new Event.Selected(frames(json), json.path("selected").asBoolean(), text(json, "by"));
        case "rated" -> new Event.Rated(frames(json), rating(json), text(json, "by"));
        case "item-ticked" ->
            new Event.ItemTicked(
                text(json, "item"), json.path("ticked").asBoolean(), text(json, "by"));
        case "ready-asked" -> new Event.ReadyAsked(ready(json));
        case "given" ->
            new Event.Given(
                id(json, "move"),
                movedSetup(json.path("what")),
                otherJob(json.path("to")),
                text(json, "by"));
        case "give-ended" ->
            new Event.GiveEnded(id(json, "move"), json.path("arrived").asBoolean());
        case "taken" ->
            new Event.Taken(
                id(json, "move"),
                setup(json),
                movedSetup(json.path("what")),
                otherJob(json.path("from")));
        case "copied" -> new Event.Copied(copy(json));
        case "named" -> new Event.Named(name(json));
        case "compared" -> new Event.Compared(ComparedJson.read(json).orElseThrow(Missing::new));
        case "list-read" ->
            new Event.ListRead(
                list(json, "headings"),
                new ListOptions(
                    texts(json.path("columns")),
                    uses(json.path("uses")),
                    optional(json, "sheet"),
                    optional(json, "encoding"),
                    optional(json, "oneSetupPer")),
                optional(json, "list").orElse(""));
        default -> new Event.Unknown(type);
      };
    } catch (Missing | DateTimeException | IllegalArgumentException e) {
      // A newer version may say more with a type that this one knows.
      return new Event.Unknown(type);
    }
  }

  private static Stamp stamp(JsonNode json, String station) throws Missing {
    var count = json.path("count");
    if (!count.isMissingNode() && (!count.canConvertToInt() || count.asInt() < 0)) {
      throw new Missing();
    }
    return new Stamp(time(json, "time").toEpochMilli(), count.asInt(), station);
  }

  private static Instant time(JsonNode json, String name) throws Missing {
    var time = LogTime.parse(text(json, name));
    if (time.isBefore(StationClock.FIRST) || time.isAfter(StationClock.LAST)) {
      throw new Missing();
    }
    return time;
  }

  private static String setup(JsonNode json) throws Missing {
    var code = text(json, "setup");
    if (code.isBlank()) {
      throw new Missing();
    }
    return code;
  }

  private static int rating(JsonNode json) throws Missing {
    var rating = json.path("rating");
    if (!rating.canConvertToInt() || rating.asInt() < 0 || rating.asInt() > JobState.MOST_RATED) {
      throw new Missing();
    }
    return rating.asInt();
  }

  private static String name(JsonNode json) throws Missing {
    var name = text(json, "name");
    if (name.length() > LONGEST_NAME) {
      throw new Missing();
    }
    return name;
  }

  private static List<FrameId> frames(JsonNode json) throws Missing {
    return list(json, "frames").stream().map(FrameId::new).toList();
  }

  private static List<Setup> setups(JsonNode nodes) throws Missing {
    var setups = new ArrayList<Setup>();
    for (var node : nodes) {
      setups.add(setupOf(node));
    }
    return setups;
  }

  private static Setup setupOf(JsonNode node) throws Missing {
    var views = new ArrayList<View>();
    for (var view : node.path("views")) {
      views.add(new View(text(view, "code"), number(view, "frames")));
    }
    return new Setup(
        text(node, "code"),
        text(node, "title"),
        views,
        number(node, "framesWanted"),
        texts(node.path("columns")));
  }

  private static SequencedMap<String, String> texts(JsonNode node) {
    var texts = new LinkedHashMap<String, String>();
    node.properties()
        .forEach(field -> texts.put(text(field.getKey()), text(field.getValue().asText())));
    return texts;
  }

  private static SequencedMap<String, Heading> uses(JsonNode node) throws Missing {
    var uses = new LinkedHashMap<String, Heading>();
    for (var use : texts(node).entrySet()) {
      uses.put(use.getKey(), Heading.ofUse(use.getValue()).orElseThrow(Missing::new));
    }
    return uses;
  }

  private static List<String> list(JsonNode json, String name) throws Missing {
    if (!json.path(name).isArray()) {
      throw new Missing();
    }
    var list = new ArrayList<String>();
    json.path(name).forEach(node -> list.add(text(node.asText())));
    return List.copyOf(list);
  }

  private static OptionalInt number(JsonNode json, String name) {
    var number = json.path(name);
    return number.isInt() && number.asInt() >= 0
        ? OptionalInt.of(number.asInt())
        : OptionalInt.empty();
  }

  private static Optional<String> optional(JsonNode json, String name) {
    return json.path(name).isTextual()
        ? Optional.of(text(json.path(name).asText()))
        : Optional.empty();
  }

  private static String text(JsonNode json, String name) throws Missing {
    return optional(json, name).orElseThrow(Missing::new);
  }

  private static String checksum(byte[] bytes, int length) {
    var crc = new CRC32C();
    crc.update(bytes, 0, length);
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }

  /** A member that must be there is not, or is not what it must be. */
  private static final class Missing extends Exception {
    private static final long serialVersionUID = 1L;
  }
}
