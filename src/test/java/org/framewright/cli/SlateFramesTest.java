package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.framewright.Templates;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Slates in real pictures, from the card to the table of frames. */
@Tag("slow")
class SlateFramesTest {
  private static final Instant NINE = Instant.parse("2026-11-23T09:00:00Z");
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir private Path folder;
  private final SampleCamera camera =
      new SampleCamera(
          SampleBody.studioA(), SampleCamera.Size.SMALL, SampleCamera.Writes.JPEG, 410);
  private Path job;
  private JobKey key;
  private int taken;

  @BeforeEach
  void aJob() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    var clock = Clock.fixed(NINE, ZoneOffset.UTC);
    var opened = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    opened.importList(new ShotList(List.of(new Setup("013", "Coat"), new Setup("014", "Hat"))));
    key = opened.slateKey();
    job = opened.folder();
  }

  @Test
  void theTableSaysBySlateForEachFrame() throws Exception {
    take("013", true);
    take("013", false);
    take("014", true);
    take("014", false);
    var table = run("frames", job, "--table");
    assertThat(table.status()).as(table.err()).isZero();
    assertThat(how(table.out()))
        .containsExactly(
            "a slate, of 013", "by slate IMG_0410", "a slate, of 014", "by slate IMG_0412");
    var counted = run("frames", job);
    assertThat(counted.out())
        .contains("2 frames, 4 files", "  013: 1", "Slates: 2", "  IMG_0410: 013, 1 frame");
    assertThat(counted.status()).isZero();
  }

  @Test
  void theDocumentNamesSlatesAndWhatTheyPlaced() throws Exception {
    take("013", true);
    take("013", false);
    var document = json("frames", job, "--table", "--json");
    assertThat(document.path("frames").asInt()).isEqualTo(1);
    assertThat(document.path("slates").path(0).path("frame").asText()).isEqualTo("IMG_0410");
    assertThat(document.path("slates").path(0).path("of").asText()).isEqualTo("setup");
    assertThat(document.path("table").path(0).path("slate").asText()).isEqualTo("013");
    assertThat(document.path("table").path(1).path("bySlate").asText()).isEqualTo("IMG_0410");
    assertThat(document.path("table").path(1).path("inDoubt").asBoolean()).isFalse();
  }

  @Test
  void aPersonSaysWhatASlateCountsForAndTakesItBack() throws Exception {
    take("013", false);
    take("013", false);
    take("014", true);
    take("014", false);
    run("frames", job);
    var said = run("frames", job, "--slate", "IMG_0410", "13", "--table");
    assertThat(said.err()).contains("IMG_0410: 1 frame changed");
    assertThat(how(said.out()))
        .containsExactly(
            "a slate, of 013", "by slate IMG_0410", "a slate, of 014", "by slate IMG_0412");
    run("frames", job, "--take-back");
    assertThat(how(run("frames", job, "--slate-counts", "IMG_0412", "before", "--table").out()))
        .containsExactly(
            "by slate IMG_0412", "by slate IMG_0412", "a slate, of 014", "by slate IMG_0412");
    var none = run("frames", job, "--slate-counts", "IMG_0412", "not");
    assertThat(none.out()).contains("Unassigned: 4").doesNotContain("Slates");
  }

  @Test
  void whatIsNoWordAndWhatIsSaidOfNoSlateIsRefused() throws Exception {
    take("013", false);
    assertThat(run("frames", job, "--slate-counts", "IMG_0410", "twice").status()).isEqualTo(2);
    assertThat(run("frames", job, "--slate-counts", "IMG_0410", "before").err())
        .contains("IMG_0410 shows no slate");
    assertThat(run("frames", job, "--slate", "IMG_0410", "099").status()).isEqualTo(2);
    assertThat(run("frames", job, "--slate", "IMG_0999", "013").status()).isEqualTo(2);
    var both = run("frames", job, "--slate", "IMG_0410", "013", "--take-back");
    assertThat(both.status()).isEqualTo(2);
    assertThat(both.err()).contains("Do one after the other; nothing was changed.");
  }

  @Test
  void aSlateIsHandedOffWhereItIsAskedForAndNowhereElse() throws Exception {
    take("013", true);
    take("013", false);
    run("frames", job);
    assertThat(run("rename", job).status()).isZero();
    assertThat(Files.exists(job.resolve("01_frames/IMG_0410.JPG"))).isTrue();
    var delivered = run("deliver", job, "--to", folder.resolve("package"), "--setups", "013");
    assertThat(delivered.status()).as(delivered.err()).isZero();
    try (var files = Files.walk(folder.resolve("package"))) {
      assertThat(files.map(file -> file.getFileName().toString()).filter(n -> n.endsWith(".JPG")))
          .hasSize(1);
    }
    var named = Files.writeString(folder.resolve("names.txt"), "IMG_0410\n");
    var asked = run("deliver", job, "--to", folder.resolve("second"), "--names", named);
    assertThat(asked.err()).contains("it is a slate, which is not handed off");
    assertThat(asked.status()).isPositive();
    var along = run("deliver", job, "--to", folder.resolve("third"), "--setups", "013", "--slates");
    assertThat(along.status()).as(along.err()).isZero();
    assertThat(along.out()).contains("1 selects and 1 slate in ");
    assertThat(folder.resolve("third/data/IMG_0410.JPG")).exists();
    var seen =
        json(
            "deliver",
            job,
            "--to",
            folder.resolve("4"),
            "--setups",
            "013",
            "--slates",
            "--preview",
            "--json");
    assertThat(seen.path("selects").path(0).path("select").asText()).isEqualTo("IMG_0410");
    assertThat(seen.path("selects").path(0).path("slate").asBoolean()).isTrue();
    assertThat(seen.path("selects").path(1).path("slate").asBoolean()).isFalse();
    var client = run("deliver", job, "--to", folder.resolve("5"), "--returned", folder, "--slates");
    assertThat(client.status()).isEqualTo(2);
  }

  private void take(String setup, boolean slate) throws Exception {
    var exposure = Exposure.of(NINE.plus(Duration.ofSeconds(10L * taken++)), setup, "F");
    camera
        .take(slate ? exposure.with(Slate.of(key, setup)) : exposure)
        .writeTo(job.resolve("01_frames"));
  }

  /** The column that says how each frame came to its setup. */
  private static List<String> how(String table) {
    var how = new ArrayList<String>();
    table.lines().skip(1).map(line -> line.split(",(?! )", -1)).forEach(row -> how.add(row[6]));
    return how.stream().map(cell -> cell.replace("\"", "")).toList();
  }

  private static JsonNode json(Object... words) throws Exception {
    return JSON.readTree(run(words).out());
  }
}
