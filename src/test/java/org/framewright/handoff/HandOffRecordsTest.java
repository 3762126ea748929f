package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.framewright.base.Problem;
import org.framewright.disk.SymbolicLinks;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HandOffRecordsTest {
  private static final String SUM = "0".repeat(64);
  private static final String OLD =
      """
      {"handOff": 1, "at": "2026-11-23T09:00:00Z", "folder": "/drive/for Bram",
       "chosenBy": "rated 4 or higher",
       "selects": [{"select": "KVO_001_F_0001", "setup": "001", "original": "x",
                    "files": [{"name": "KVO_001_F_0001.JPG", "sha256": "%s"}]}]}
      """
          .formatted(SUM);

  @TempDir private Path folder;
  private Job job;
  private Path records;

  @BeforeEach
  void aJob() throws Exception {
    job = Scene.ofOneFile(folder).job();
    records = Files.createDirectory(job.folder().resolve(".framewright/handoffs"));
  }

  private HandOffRecords.Listing read() throws Exception {
    return HandOffRecords.of(job).read();
  }

  private Problem damaged(String text) throws Exception {
    Files.writeString(records.resolve("0001.json"), text);
    var listing = read();
    assertThat(listing.usable()).isEmpty();
    assertThat(listing.nextNumber()).isEqualTo(2);
    return listing.damaged().get(1);
  }

  @Test
  void aRecordWithoutAStateIsOfAPackageThatWasDelivered() throws Exception {
    Files.writeString(records.resolve("0001.json"), OLD);
    assertThat(read().usable().get(1))
        .isEqualTo(
            new HandOffRecord(
                1,
                HandOffRecord.State.DELIVERED,
                "2026-11-23T09:00:00Z",
                "/drive/for Bram",
                Optional.empty(),
                Optional.empty(),
                "rated 4 or higher",
                List.of(
                    new HandOffRecord.Entry(
                        "KVO_001_F_0001",
                        "001",
                        "x",
                        List.of(
                            new HandOffRecord.Copy(
                                "KVO_001_F_0001.JPG", SUM, OptionalLong.empty()))))));
  }

  @Test
  void whatIsWrittenIsReadBack() throws Exception {
    var begun = HandOffRecord.begun(7, "2026", "/to", "/.framewright-x", "picked");
    var placing =
        begun.placing(
            SUM,
            List.of(
                new HandOffRecord.Entry(
                    "S",
                    "001",
                    "O",
                    List.of(new HandOffRecord.Copy("S.JPG", SUM, OptionalLong.of(12))))));
    for (var record : List.of(begun, placing, placing.delivered(), placing.abandoned())) {
      assertThat(RecordText.read(RecordText.write(record), 7, "file")).isEqualTo(record);
    }
    assertThat(new String(RecordText.write(begun), StandardCharsets.UTF_8))
        .contains("\"handOff\" : 7", "\"state\" : \"begun\"")
        .doesNotContain("null");
    assertThat(placing.abandoned().selects()).isEmpty();
    assertThat(placing.delivered().draft()).isEmpty();
    assertThat(placing.bytes()).isEqualTo(12);
    assertThat(placing.files()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\0\0\0\0",
        "{",
        "[]",
        "null",
        "7",
        "\"text\"",
        "{}",
        "{\"handOff\": 2, \"folder\": \"/x\"}",
        "{\"handOff\": 1}",
        "{\"handOff\": 1, \"folder\": \" \"}",
        "{\"handOff\": 1, \"folder\": \"/x\\u0000y\"}",
        "{\"handOff\": 1, \"folder\": \"/x\", \"state\": \"odd\"}",
        "{\"handOff\": 1, \"folder\": \"/x\", \"selects\": 7}",
        "{\"handOff\": 1, \"folder\": \"/x\"} more",
        "{\"handOff\": 99999999999, \"folder\": \"/x\"}",
        "{\"handOff\": 1, \"folder\": \"/x\", \"selects\": [{}]}",
        "{\"handOff\": 1, \"folder\": \"/x\", \"selects\": [{\"select\": \"S\"}]}",
      })
  void aDamagedRecordSaysWhatAndWhere(String text) throws Exception {
    var problem = damaged(text);
    assertThat(problem.what()).startsWith("the record of this hand-off cannot be used: ");
    assertThat(problem.what().lines()).hasSize(1);
    assertThat(problem.where()).contains("0001.json");
    assertThat(problem.remedy()).isNotBlank();
  }

  @Test
  void whereIsTheLineOfTheFault() throws Exception {
    assertThat(damaged("{\n \"handOff\": 1,\n \"folder\": oops\n}").where())
        .endsWith("0001.json, line 3");
    assertThat(damaged(OLD.replace(SUM, "short")).where()).contains("0001.json, line ");
    assertThat(damaged(OLD.replace(SUM, "short")).what()).contains("KVO_001_F_0001.JPG");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"../x", "a/b", "/etc/passwd", "a\\\\b", "..", ".", "~x", "C:x", "x\\u0000y", ""})
  void aNameThatIsAPathIsNoFileOfAPackage(String name) throws Exception {
    assertThat(damaged(OLD.replace("KVO_001_F_0001.JPG", name)).what())
        .contains("a file with a name that is none");
  }

  @Test
  void bytesThatAreNoTextAreADamagedRecord() throws Exception {
    Files.write(records.resolve("0001.json"), new byte[] {(byte) 0xC3, (byte) 0x28, 0, 1});
    assertThat(read().damaged().get(1).where()).contains("0001.json");
    Files.write(records.resolve("0002.json"), "\uFEFF{".getBytes(StandardCharsets.UTF_16LE));
    assertThat(read().damaged().get(2).where()).contains("0002.json");
  }

  @Test
  void deepAndLongRecordsAreRefusedInBoundedTime() throws Exception {
    assertThat(damaged("[".repeat(200_000)).where()).contains("0001.json");
    assertThat(damaged("{\"x\":" + "[".repeat(200_000)).where()).contains("0001.json");
    Files.write(records.resolve("0001.json"), new byte[HandOffRecords.LARGEST + 1]);
    assertThat(read().damaged().get(1).what()).contains("larger than any record");
  }

  @Test
  void aFolderALinkOrAPipeInPlaceOfARecordIsNamed() throws Exception {
    Files.createDirectory(records.resolve("0003.json"));
    SymbolicLinks.make(records.resolve("0004.json"), folder.resolve("else.json"));
    Files.writeString(folder.resolve("else.json"), OLD.replace("\"handOff\": 1", "\"handOff\": 4"));
    pipe(records.resolve("0005.json"));
    var listing = read();
    assertThat(listing.usable()).isEmpty();
    assertThat(listing.damaged()).containsOnlyKeys(3, 4, 5);
    assertThat(listing.damaged().get(4).where()).contains("0004.json");
  }

  static void pipe(Path path) throws Exception {
    assertThat(new ProcessBuilder("mkfifo", path.toString()).start().waitFor()).isZero();
  }

  @Test
  void aFolderOfRecordsThatIsALinkIsRefused() throws Exception {
    Files.delete(records);
    var outside = Files.createDirectory(folder.resolve("outside"));
    SymbolicLinks.make(records, outside);
    assertThat(Scene.handOff(job)).isNotNull();
    assertThatThrownBy(this::read).hasMessageContaining("handoffs");
    assertThatThrownBy(() -> HandOffRecords.of(job).hold()).hasMessageContaining("handoffs");
    assertThat(outside).isEmptyDirectory();
  }

  @Test
  void aDamagedRecordHindersNoHandOffAndKeepsItsNumber() throws Exception {
    Files.writeString(records.resolve("0007.json"), "{");
    var outcome = Scene.deliver(job, folder.resolve("for Bram"));
    assertThat(outcome).isInstanceOf(Delivery.Delivered.class);
    assertThat(((Delivery.Delivered) outcome).number()).isEqualTo(8);
    assertThat(outcome.remarks())
        .singleElement()
        .satisfies(remark -> assertThat(remark.where()).contains("0007.json"));
    var returns = Returns.of(job, folder.resolve("for Bram"), OptionalInt.empty());
    assertThat(returns.answers()).hasSize(1);
    assertThat(returns.problems()).hasSize(1);
    assertThat(returns.complete()).isFalse();
    assertThat(Returns.of(job, folder.resolve("for Bram"), OptionalInt.of(8)).problems()).isEmpty();
    assertThatThrownBy(() -> Returns.of(job, folder.resolve("for Bram"), OptionalInt.of(7)))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("0007.json");
  }

  @Test
  void aRecordThatAnOlderVersionLeftUnderItsTemporaryNameGetsItsName() throws Exception {
    Files.writeString(records.resolve("0001.json.tmp"), OLD);
    assertThat(read().usable()).containsOnlyKeys(1);
    var outcome = Scene.deliver(job, folder.resolve("for Bram"));
    assertThat(((Delivery.Delivered) outcome).number()).isEqualTo(2);
    assertThat(outcome.remarks()).singleElement().matches(one -> one.what().contains("its name"));
    assertThat(records.resolve("0001.json")).exists();
    assertThat(records.resolve("0001.json.tmp")).doesNotExist();
    assertThat(Scene.deliver(job, folder.resolve("next")).remarks()).isEmpty();
  }

  @Test
  void aTornRecordOfAnOlderVersionHindersNothing() throws Exception {
    Files.writeString(records.resolve("0001.json.tmp"), OLD.substring(0, 50));
    var outcome = Scene.deliver(job, folder.resolve("for Bram"));
    assertThat(((Delivery.Delivered) outcome).number()).isEqualTo(2);
    assertThat(outcome.remarks())
        .singleElement()
        .satisfies(remark -> assertThat(remark.where()).contains("0001.json.tmp"));
  }

  @Test
  void aRecordUnderItsNameWinsOverItsTemporaryOne() throws Exception {
    Files.writeString(records.resolve("0001.json.tmp"), "torn");
    Files.writeString(records.resolve("0001.json"), OLD);
    assertThat(read().usable()).containsOnlyKeys(1);
    assertThat(read().damaged()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1.json", "0001.txt", "x0001.json", "0001.json.bak", "lock", "12345678901.json"})
  void otherFilesAreNoRecords(String name) throws Exception {
    Files.writeString(records.resolve(name), "{");
    assertThat(read().nextNumber()).isEqualTo(1);
  }

  @Test
  void numbersGoOnBehindTheLastOne() throws Exception {
    Files.writeString(records.resolve("0012.json"), OLD.replace("1,", "12,"));
    assertThat(HandOff.nextNumber(job)).isEqualTo(13);
    Files.writeString(records.resolve("12345.json"), "{");
    assertThat(HandOff.nextNumber(job)).isEqualTo(12346);
  }

  @Test
  void aJobThatIsGoneIsNotMadeAgain() throws Exception {
    var handOff = Scene.handOff(job);
    var plan = handOff.rated(4);
    Files.move(job.folder(), folder.resolve("moved away"));
    var outcome =
        handOff.deliver(plan, folder.resolve("for Bram"), org.framewright.base.Progress.NONE);
    assertThat(outcome).isInstanceOf(Delivery.Failed.class);
    assertThat(job.folder()).doesNotExist();
    assertThat(folder.resolve("for Bram")).doesNotExist();
  }

  @Test
  void onlyOneHandOffOfAJobIsWrittenAtATime() throws Exception {
    try (var _ = HandOffRecords.of(job).hold().orElseThrow()) {
      assertThat(HandOffRecords.of(job).hold()).isEmpty();
      var outcome = Scene.deliver(job, folder.resolve("for Bram"));
      assertThat(outcome).isInstanceOf(Delivery.Refused.class);
      assertThat(((Delivery.Refused) outcome).problem().remedy()).contains("Wait");
      assertThat(folder.resolve("for Bram")).doesNotExist();
    }
    assertThat(Scene.deliver(job, folder.resolve("for Bram")))
        .isInstanceOf(Delivery.Delivered.class);
  }
}
