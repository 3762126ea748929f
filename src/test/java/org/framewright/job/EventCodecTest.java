package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.Test;

/** Lines with the right checksum that say something else than the program would. */
class EventCodecTest {
  private static final String NOW = "2026-11-23T09:00:00Z";
  private static final String TICK = "\"marked\",\"setup\":\"1\",\"state\":\"shot\"";

  private static EventCodec.Line decode(String line) throws EventCodec.BadLine {
    return EventCodec.decode(line.getBytes(StandardCharsets.UTF_8));
  }

  private static Event event(String body) throws EventCodec.BadLine {
    return decode(Lines.event("desk", 1, NOW, body)).entry().event();
  }

  private static void isBad(String line) {
    assertThatThrownBy(() -> decode(line)).isInstanceOf(EventCodec.BadLine.class);
  }

  @Test
  void readsALineAndItsPlace() throws Exception {
    var entry = decode(Lines.event("desk", 7, NOW, TICK)).entry();
    assertThat(entry)
        .isEqualTo(
            new Entry(
                7,
                new Stamp(Instant.parse(NOW).toEpochMilli(), 0, "desk"),
                Instant.parse(NOW),
                new Event.Marked("1", SetupState.SHOT, MarkDetails.NONE)));
  }

  @Test
  void writesAndReadsHowListsAreToBeRead() throws Exception {
    var columns = new LinkedHashMap<String, String>();
    columns.put("setup", "Art. \"No.\"");
    columns.put("colour", "Farbe");
    var uses = new LinkedHashMap<String, Heading>();
    uses.put("Price", Heading.UNUSED);
    uses.put("Titel", Heading.KEPT);
    uses.put("45°", Heading.VIEW);
    for (var options :
        List.of(
            ListOptions.NONE,
            new ListOptions(
                columns,
                uses,
                Optional.of("Tops"),
                Optional.of("windows-1250"),
                Optional.of("")))) {
      var event = new Event.ListRead(List.of("Art. \"No.\"", "", "款号"), options, "list.csv");
      var entry = new Entry(1, new Stamp(1, 0, "desk"), Instant.parse(NOW), event);
      var line = EventCodec.encode(new EventCodec.Line(entry, false));
      assertThat(EventCodec.decode(line).entry().event()).isEqualTo(event);
    }
    assertThat(event("\"list-read\",\"columns\":{}")).isEqualTo(new Event.Unknown("list-read"));
  }

  @Test
  void writesAndReadsASetupThatGoesToAnotherJob() throws Exception {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Zip", "no");
    columns.put("A very long heading", "yes");
    var codes = new LinkedHashMap<UUID, String>();
    codes.put(new UUID(3, 4), "14");
    var what =
        new MovedSetup(
            new Setup("014", "Coat \"écru\"", List.of(new View("F")), OptionalInt.of(3), columns),
            List.of(new MovedSetup.Note("Steam it", "", "desk", Instant.parse(NOW))),
            codes);
    var other = new OtherJob(new UUID(5, 6), "set_02");
    for (var event :
        List.of(
            new Event.Given(new UUID(1, 2), what, other, "Mara"),
            new Event.GiveEnded(new UUID(1, 2), true),
            new Event.Taken(new UUID(1, 2), "003", what, other))) {
      var entry = new Entry(1, new Stamp(1, 0, "desk"), Instant.parse(NOW), event);
      var line = EventCodec.encode(new EventCodec.Line(entry, false));
      assertThat(EventCodec.decode(line).entry().event()).isEqualTo(event);
    }
    var read = MovedSetup.read(what.json()).orElseThrow();
    assertThat(read).isEqualTo(what);
    assertThat(read.setup().columns().keySet()).containsExactly("Zip", "A very long heading");
    for (var odd : List.of("", "null", "[]", "{\"setup\":{\"code\":\" \",\"title\":\"\"}}")) {
      assertThat(MovedSetup.read(odd)).isEmpty();
    }
    assertThat(event("\"given\",\"move\":\"none\"")).isEqualTo(new Event.Unknown("given"));
    assertThat(event("\"taken\",\"move\":\"" + new UUID(1, 2) + "\",\"setup\":\"3\""))
        .isEqualTo(new Event.Unknown("taken"));
  }

  @Test
  void takesNoKeyOfSlatesThatIsNone() throws Exception {
    assertThat(event("\"slates-keyed\",\"slates\":\"K7Q2\""))
        .isEqualTo(new Event.SlatesKeyed(new JobKey("K7Q2")));
    for (var odd : List.of("\"K7U2\"", "\"K7Q22\"", "\"\"", "7", "null", "[\"K7Q2\"]")) {
      assertThat(event("\"slates-keyed\",\"slates\":" + odd))
          .isEqualTo(new Event.Unknown("slates-keyed"));
    }
  }

  @Test
  void leavesOutLinesWhosePlaceIsNotAPlace() {
    var good = Lines.event("desk", 1, NOW, TICK);
    var open = good.substring(0, good.indexOf(",\"crc32c"));
    for (var odd :
        List.of(
            open.replace("\"number\":1", "\"number\":0"),
            open.replace("\"number\":1", "\"number\":-1"),
            open.replace("\"number\":1", "\"number\":\"1\""),
            open.replace("\"number\":1", "\"number\":9223372036854775807"),
            open.replace("\"number\":1", "\"number\":1e400"),
            open.replace("\"number\":1", "\"number\":" + "9".repeat(100_000)),
            open.replace("\"number\":1,", ""),
            open.replace("\"count\":0", "\"count\":-1"),
            open.replace("\"count\":0", "\"count\":4000000000"),
            open.replace("\"count\":0", "\"count\":\"x\""),
            open.replace("\"station\":\"desk\"", "\"station\":\"../../desk\""),
            open.replace("\"station\":\"desk\"", "\"station\":\"\\u001b[2J\""),
            open.replace("\"station\":\"desk\"", "\"station\":\"" + "d".repeat(129) + "\""),
            open.replace("\"station\":\"desk\"", "\"station\":7"),
            open.replace("\"time\":\"" + NOW, "\"time\":\"noon"),
            open.replace("\"type\":\"marked\"", "\"type\":null"))) {
      isBad(Lines.sealed(odd));
    }
  }

  @Test
  void leavesOutWhatIsNoObject() {
    for (var odd : List.of("", "[1", "{\"a\":", "nonsense", "{\"a\":1}}{")) {
      isBad(Lines.sealed(odd));
    }
    isBad("");
    isBad(",\"crc32c\":\"00000000\"}");
    isBad(Lines.sealed("{\"a\":" + "[".repeat(100_000)));
    isBad(Lines.sealed("{\"a\":" + "{\"a\":".repeat(100_000)));
  }

  @Test
  void acceptsFieldsThatANewerVersionMayAdd() throws Exception {
    assertThat(event(TICK + ",\"more\":{\"deep\":[[[{\"er\":1}]]]}"))
        .isEqualTo(new Event.Marked("1", SetupState.SHOT, MarkDetails.NONE));
    assertThat(event(TICK + ",\"reason\":7"))
        .isEqualTo(new Event.Marked("1", SetupState.SHOT, MarkDetails.NONE));
  }

  @Test
  void givesNoEffectToEventsThatLackWhatTheyNeed() throws Exception {
    for (var odd :
        List.of(
            "\"marked\",\"setup\":\"\",\"state\":\"shot\"",
            "\"marked\",\"setup\":\" \",\"state\":\"shot\"",
            "\"marked\",\"setup\":1,\"state\":\"shot\"",
            "\"marked\",\"setup\":\"1\"",
            "\"moved\",\"setup\":\"\",\"by\":\"\",\"frames\":[\"a\"]",
            "\"moved\",\"setup\":\"1\",\"by\":\"\",\"frames\":\"a\"",
            "\"moved\",\"setup\":\"1\",\"frames\":[\"a\"]",
            "\"arrived\"",
            "\"selected\",\"frames\":[]",
            "\"rated\",\"frames\":[\"a\"],\"by\":\"\"",
            "\"rated\",\"rating\":6,\"frames\":[\"a\"],\"by\":\"\"",
            "\"rated\",\"rating\":-1,\"frames\":[\"a\"],\"by\":\"\"",
            "\"rated\",\"rating\":\"3\",\"frames\":[\"a\"],\"by\":\"\"",
            "\"taken-back\",\"event\":7",
            "\"taken-back\",\"event\":{\"station\":\"x\",\"time\":\"never\",\"count\":0}",
            "\"list-changed\",\"put\":[{}],\"removed\":[],\"order\":[]",
            "\"list-changed\",\"put\":[{\"code\":\"\",\"title\":\"\"}],\"removed\":[],\"order\":[]",
            "\"list-changed\",\"put\":[{\"code\":\"1\",\"title\":\"\",\"views\":[{\"code\":\" \"}]}],\"removed\":[],\"order\":[]",
            "\"list-changed\",\"put\":[],\"removed\":{},\"order\":[]")) {
      assertThat(event(odd)).isInstanceOf(Event.Unknown.class);
    }
  }

  @Test
  void takesNoNumberOfFramesThatIsNone() throws Exception {
    var changed =
        (Event.ListChanged)
            event(
                "\"list-changed\",\"put\":[{\"code\":\"1\",\"title\":\"T\",\"framesWanted\":-4,"
                    + "\"views\":[{\"code\":\"F\",\"frames\":9999999999},{\"code\":\"B\",\"frames\":0}]}],"
                    + "\"removed\":[],\"order\":[]");
    assertThat(changed.put().getFirst())
        .isEqualTo(
            new Setup(
                "1",
                "T",
                List.of(new View("F"), new View("B", OptionalInt.of(0))),
                OptionalInt.empty(),
                new LinkedHashMap<>()));
  }

  @Test
  void readsWhatItWritesOfSlates() throws Exception {
    var frames = List.of(new FrameId("ab"), new FrameId("cd"));
    var events =
        List.<Event>of(
            new Event.LookedAt(
                List.of(
                    new FrameLook(frames.getFirst(), "IMG_0412", Optional.of("S1K7Q2014C75Y")),
                    new FrameLook(frames.getLast(), "IMG_0413", Optional.empty()))),
            new Event.Marked(
                "014", SetupState.ON_SET, MarkDetails.NONE, Optional.of(frames.getFirst())),
            new Event.SlateSaid(frames, new SlateWord.OfSetup("014"), "Ana"),
            new Event.SlateSaid(frames, new SlateWord.NoSlate(), "Ana"),
            new Event.SlateSaid(frames, new SlateWord.Backwards(), "Ana"),
            new Event.SlateSaid(frames, new SlateWord.Follow(Optional.of("014")), "Ana"),
            new Event.SlateSaid(frames, new SlateWord.Follow(Optional.empty()), "Ana"),
            new Event.SlateSaid(frames, new SlateWord.Stay(), "Ana"));
    for (var event : events) {
      var entry = new Entry(1, new Stamp(0, 0, "desk"), Instant.EPOCH, event);
      var line = EventCodec.encode(new EventCodec.Line(entry, false));
      assertThat(EventCodec.decode(line).entry().event()).isEqualTo(event);
    }
    // A newer version may know more words.
    assertThat(event("\"slate-said\",\"word\":\"twice\",\"by\":\"Ana\",\"frames\":[]"))
        .isInstanceOf(Event.Unknown.class);
  }

  @Test
  void writesAndReadsHalvesOfCharactersAsOneStandIn() throws Exception {
    assertThat(event("\"marked\",\"setup\":\"a\\ud800\",\"state\":\"shot\""))
        .isEqualTo(new Event.Marked("a\uFFFD", SetupState.SHOT, MarkDetails.NONE));
    var columns = new LinkedHashMap<String, String>();
    columns.put("h\uD800", "v\uDC00");
    var events =
        List.<Event>of(
            new Event.Marked(
                "a\uD800",
                SetupState.SHOT,
                MarkDetails.by("\uDC00").andView("\uD800").andReason("\uD800 \uD83D\uDCF7")),
            new Event.Moved(
                List.of(new FrameId("\uD800")), "\uD800", Optional.of("\uD800"), "\uD800"),
            new Event.ListChanged(
                List.of(
                    new Setup(
                        "\uD800",
                        "\uD800",
                        List.of(new View("\uD800")),
                        OptionalInt.empty(),
                        columns)),
                List.of("\uD800"),
                List.of("\uD800")));
    for (var event : events) {
      var entry = new Entry(1, new Stamp(0, 0, "desk"), Instant.EPOCH, event);
      var line = EventCodec.encode(new EventCodec.Line(entry, false));
      var read = EventCodec.decode(line).entry().event();
      assertThat(read).isNotInstanceOf(Event.Unknown.class);
      assertThat(new String(line, StandardCharsets.UTF_8)).contains("\uFFFD");
      var again = new Entry(1, new Stamp(0, 0, "desk"), Instant.EPOCH, read);
      assertThat(EventCodec.encode(new EventCodec.Line(again, false))).isEqualTo(line);
    }
    var camera = new Event.Marked("\uD83D\uDCF7", SetupState.SHOT, MarkDetails.NONE);
    var entry = new Entry(1, new Stamp(0, 0, "desk"), Instant.EPOCH, camera);
    assertThat(EventCodec.decode(EventCodec.encode(new EventCodec.Line(entry, true))))
        .isEqualTo(new EventCodec.Line(entry, true));
  }

  /** The name of its evidence must not lead out of the folder of evidence. */
  @Test
  void aComparisonThatIsNoneHasNoEffect() throws Exception {
    var good =
        "\"compared\",\"evidence\":\"a.sha256\",\"sha256\":\""
            + "ab".repeat(32)
            + "\",\"frames\":1,\"once\":0,\"cards\":[]";
    assertThat(event(good)).isInstanceOf(Event.Compared.class);
    for (var odd :
        List.of(
            good.replace("a.sha256", "../../a"),
            good.replace("a.sha256", "a/b"),
            good.replace("abab", "ABAB"),
            good.replace("\"once\":0", "\"once\":-1"),
            good.replace("\"frames\":1", "\"frames\":1e99"),
            good.replace("\"cards\":[]", "\"cards\":7"),
            good.replace("\"cards\":[]", "\"cards\":[{\"files\":1,\"bytes\":-1}]"))) {
      assertThat(event(odd)).as(odd).isEqualTo(new Event.Unknown("compared"));
    }
  }

  @Test
  void saysWhatIsWrongWithALine() {
    assertThatThrownBy(() -> decode("x".repeat(50)))
        .hasMessage("its checksum does not fit its text");
    assertThatThrownBy(() -> decode("x".repeat(50) + "\0"))
        .hasMessage("it has bytes that are no text");
    assertThatThrownBy(() -> decode(Lines.sealed("[1"))).hasMessage("it is no event");
  }
}
