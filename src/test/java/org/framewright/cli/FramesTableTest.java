package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FramesTableTest {
  private static final Instant NINE = Instant.parse("2026-11-23T09:00:00Z");
  private static final List<String> HEADINGS =
      List.of(
          "File", "Time", "Body", "Setup", "View", "Rating", "How it came to its setup", "Label");

  @TempDir private Path folder;
  private Instant now = NINE;
  private final Clock clock = ((InstantSource) () -> now).withZone(ZoneId.systemDefault());
  private Job job;

  /** Of four frames, one arrived, one was moved, one came from a card, one belongs nowhere. */
  @BeforeEach
  void aJobWithFrames() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    job.importList(new ShotList(List.of(new Setup("001", "Coat"), new Setup("002", "Hat"))));
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    camera.take(Exposure.of(NINE.minusSeconds(3600), "001", "F")).writeTo(job.framesFolder());
    job.foundPresent(job.scan());
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    for (int i = 0; i < 2; i++) {
      now = now.plusSeconds(10);
      camera.take(Exposure.of(now, "001", "F")).writeTo(job.framesFolder());
      now = now.plusSeconds(1);
      job.recordArrivals(job.scan());
    }
    now = now.plusSeconds(10);
    camera.take(Exposure.of(now, "001", "F")).writeTo(job.framesFolder());
    now = now.plusSeconds(30);
    job.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    var scan = job.scan();
    job.moveFrames(
        List.of(job.inOrder(scan).get(2).id()), "002", java.util.Optional.of("D"), "Timo");
  }

  private static List<List<String>> read(String csv) throws IOException {
    return new CsvMapper()
        .readerForListOf(String.class)
        .with(CsvParser.Feature.WRAP_AS_ARRAY)
        .<List<String>>readValues(csv)
        .readAll();
  }

  private static String local(Instant time) {
    return DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss")
        .format(LocalDateTime.ofInstant(time, ZoneId.systemDefault()));
  }

  @Test
  void oneLineAFrameSaysHowItCameToItsSetup() throws Exception {
    var ran = run("frames", job.folder(), "--table");
    assertThat(ran.status()).as("one frame is unassigned").isEqualTo(1);
    var rows = read(ran.out());
    assertThat(rows.getFirst()).isEqualTo(HEADINGS);
    assertThat(rows).hasSize(5);
    assertThat(rows.get(1).subList(2, 6))
        .containsExactly(
            SampleBody.studioA().model() + " " + SampleBody.studioA().serial(), "", "", "");
    assertThat(rows.get(1).get(6)).startsWith("unassigned: nothing was on set; 001 came on set");
    assertThat(rows.get(2).subList(3, 7))
        .containsExactly("001", "F", "", "it was on set when the frame arrived");
    assertThat(rows.get(3).subList(3, 7)).containsExactly("002", "D", "", "a person moved it");
    assertThat(rows.get(4).subList(3, 7))
        .containsExactly("001", "F", "", "it was on set when the frame was taken");
    assertThat(rows.stream().skip(1).map(List::getFirst))
        .containsExactly(
            "01_frames/IMG_0001.DNG",
            "01_frames/IMG_0002.DNG",
            "01_frames/IMG_0003.DNG",
            "01_frames/IMG_0004.DNG");
    // The body's clock is put right by what was measured, a second here.
    assertThat(rows.get(2).get(1)).isEqualTo(local(NINE.plusSeconds(11)));
  }

  @Test
  void theLabelOfASidecarStandsInTheTableAsItWasWritten() throws Exception {
    var sidecar = job.framesFolder().resolve("IMG_0002.xmp");
    Files.writeString(
        sidecar,
        """
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Label="À revoir"/>
         </rdf:RDF>
        </x:xmpmeta>
        """);
    Files.setLastModifiedTime(sidecar, FileTime.from(NINE));
    var rows = read(run("frames", job.folder(), "--table").out());
    assertThat(rows.stream().skip(1).map(row -> row.get(7)))
        .containsExactly("", "À revoir", "", "");
    var json = run("frames", job.folder(), "--table", "--json").json();
    assertThat(json.findValuesAsText("label")).contains("À revoir");
  }

  @Test
  void aFileIsWrittenByItsEndingAndNeverReplacedUnasked() throws Exception {
    var csv = folder.resolve("frames.csv");
    assertThat(run("frames", job.folder(), "--table", csv).out())
        .isEqualTo("4 frames written to " + csv + System.lineSeparator());
    var text = Files.readString(csv);
    assertThat(text).startsWith("\uFEFFFile,Time,Body").endsWith("\r\n");
    assertThat(read(text.substring(1))).hasSize(5);
    var again = run("frames", job.folder(), "--table", csv);
    assertThat(again.status()).isEqualTo(3);
    assertThat(again.err()).contains("exists already");
    Files.writeString(csv, "old");
    assertThat(run("frames", job.folder(), "--table", csv, "--replace").status()).isEqualTo(1);
    assertThat(Files.readString(csv)).isEqualTo(text);
    var workbook = folder.resolve("frames.XLSX");
    run("frames", job.folder(), "--table", workbook);
    try (var read = new ReadableWorkbook(workbook.toFile())) {
      var rows = read.getFirstSheet().read();
      assertThat(rows).hasSize(5);
      assertThat(rows.getFirst().getCellText(0)).isEqualTo("File");
      assertThat(rows.get(3).getCellText(3)).isEqualTo("002");
    }
  }

  @Test
  void noPlaceThatIsTheJobsOwnIsWrittenTo() {
    for (var place : List.of("01_frames/t.csv", ".framewright/t.csv")) {
      assertThat(run("frames", job.folder(), "--table", job.folder().resolve(place)).status())
          .as(place)
          .isEqualTo(3);
    }
    assertThat(run("frames", job.folder(), "--table", folder).status()).isEqualTo(2);
    assertThat(run("frames", job.folder(), "--table", "a\0b").status()).isEqualTo(2);
    assertThat(run("frames", job.folder(), "--replace").status()).isEqualTo(2);
    assertThat(run("frames", job.folder(), "--table", "--replace").status()).isEqualTo(2);
    assertThat(run("frames", job.folder(), "--table", "--watch", "--for", "0").status())
        .isEqualTo(2);
  }

  @Test
  void jsonHasTheSameRows() throws Exception {
    var json = run("frames", job.folder(), "--table", "--json").json();
    assertThat(json.path("frames").asInt()).isEqualTo(4);
    assertThat(json.path("table")).hasSize(4);
    assertThat(json.at("/table/2/setup").asText()).isEqualTo("002");
    assertThat(json.at("/table/2/how").asText()).isEqualTo("a person moved it");
    assertThat(json.at("/table/0/setup").isNull()).isTrue();
    assertThat(json.at("/table/1/time").asText()).contains("T");
  }

  @Test
  void noNameRunsAsAFormulaOrActsOnATerminal() throws Exception {
    var hostile = Files.createDirectory(job.framesFolder().resolve("=cmd"));
    try (var files = Files.newDirectoryStream(job.framesFolder(), "IMG_0002.*")) {
      for (var file : files) {
        var name = file.getFileName().toString();
        Files.copy(
            file, hostile.resolve("x\u001b[31m;=1." + name.substring(name.lastIndexOf('.') + 1)));
      }
    }
    var out = run("frames", job.folder(), "--table").out();
    assertThat(out).doesNotContain("\u001b").contains("\\u{1B}").contains(";'=1");
    assertThat(out).contains("a copy, counted once");
  }

  @Test
  void framesThatAreNotWholeAreInItToo() throws Exception {
    Files.write(
        job.framesFolder().resolve("IMG_0009.JPG"), new byte[] {(byte) 0xFF, (byte) 0xD8, 1});
    var rows = read(run("frames", job.folder(), "--table").out());
    assertThat(rows).hasSize(6);
    assertThat(rows)
        .anySatisfy(row -> assertThat(row.get(6)).isEqualTo("not counted: it is not whole"));
  }

  @Test
  void aClockThatWasNeverSetIsTold() throws Exception {
    new SampleCamera(SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 500)
        .take(Exposure.of(Instant.parse("2004-01-01T12:00:00Z"), "001", "F"))
        .writeTo(job.framesFolder());
    var ran = run("frames", job.folder());
    assertThat(ran.out())
        .contains(
            "1 frame of "
                + SampleBody.studioB().model()
                + " "
                + SampleBody.studioB().serial()
                + " is 22 years behind: its clock was never set");
    var json = run("frames", job.folder(), "--json").json();
    assertThat(json.at("/implausibleClocks/0/off").asText()).isEqualTo("22 years behind");
  }
}
