package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.framewright.base.OwnFolder;
import org.framewright.frames.FrameId;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/**
 * Job folders made to do harm: a whole one, of which some parts were replaced or added by somebody
 * who knows the formats. Whatever is in them, opening and asking ends in an answer or in words for
 * people, and nothing beside the folder changes.
 */
final class HostileFolders {
  private static final Station DESK = new Station("desk");
  private static final String NOW = "2026-11-23T10:00:00Z";
  private static final List<String> TEXTS =
      List.of(
          "1",
          "001",
          "2",
          "",
          " ",
          ".",
          "..",
          "../../canary",
          "/etc/passwd",
          "C:\\canary",
          "a/b",
          "\\u0000",
          "\\u001b[2J\\u0007",
          "\\u202e",
          "\\ud800",
          "\\n\\n",
          "=1+1",
          "\\u0130",
          "0",
          "000",
          "CON",
          "x".repeat(300),
          "9".repeat(5_000),
          "Setup \\\"7\\\"",
          "\\uD83D\\uDCF7");
  private static final List<String> TIMES =
      List.of(
          NOW,
          "2026-11-22T10:00:00Z",
          "1970-01-01T00:00:00Z",
          "9999-12-31T23:59:59.999Z",
          "2300-01-01T00:00:00Z",
          "+1000000000-12-31T23:59:59Z",
          "-1000000000-01-01T00:00:00Z",
          "now");
  private static final List<String> NUMBERS =
      List.of("0", "1", "2", "-1", "2147483647", "9223372036854775807", "1e999", "\"x\"", "null");

  private final Path root;
  private final Path template;
  private final Path canary;
  private final Map<Path, Long> sizes;
  private final TestClock clock = new TestClock("2026-11-23T11:00:00Z");

  HostileFolders(Path root) throws Exception {
    this.root = root;
    canary = Files.writeString(root.resolve("canary"), "{\"untouched\":true}\n");
    var job =
        ((Started.Opened)
                Job.start(
                    JobStartTest.convention(),
                    Files.createDirectory(root.resolve("template")),
                    JobStartTest.VALUES,
                    clock,
                    DESK))
            .job();
    job.importList(new ShotList(List.of(new Setup("1", "Coat"), new Setup("2", "Hat"))));
    job.mark("1", SetupState.ON_SET, MarkDetails.NONE);
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    camera.take(Exposure.of(Instant.parse(NOW), "1", "")).writeTo(job.framesFolder());
    clock.pass(Duration.ofSeconds(5));
    job.recordArrivals(job.scan());
    job.moveFrames(List.of(new FrameId("a")), "2", Optional.empty(), "Ana");
    template = job.folder();
    sizes = sizes(template);
  }

  private static Map<Path, Long> sizes(Path folder) throws IOException {
    var sizes = new TreeMap<Path, Long>();
    try (var files = Files.walk(folder)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        sizes.put(file, Files.size(file));
      }
    }
    return sizes;
  }

  /** Makes the folder of this number, uses it in every way, and removes it. */
  void isHarmless(long seed) throws Exception {
    var random = new Random(seed);
    var parent = Files.createDirectory(root.resolve("case" + seed));
    var folder = parent.resolve(template.getFileName());
    copy(folder);
    // Nothing more is spoiled once there is a link: it would be spoiled where the link leads to.
    for (int i = 1 + random.nextInt(3);
        i > 0 && targets(folder).stream().noneMatch(Files::isSymbolicLink);
        i--) {
      try {
        spoil(folder, random);
      } catch (IOException e) {
        // What was done before leaves no place for it.
      }
    }
    try {
      use(folder);
    } catch (JobException e) {
      assertThat(e.what()).isNotBlank();
      assertThat(e.remedy()).isNotBlank();
    } catch (IOException e) {
      assertThat(e.getMessage()).isNotBlank();
    }
    assertThat(canary).hasContent("{\"untouched\":true}\n");
    assertThat(sizes(template)).as("the folder that links lead to").isEqualTo(sizes);
    try (var beside = Files.list(parent)) {
      assertThat(beside).containsExactly(folder);
    }
    OwnFolder.remove(parent);
  }

  private void use(Path folder) throws IOException, JobException {
    var job = Job.open(folder, clock, new Station("laptop"));
    job.refresh();
    assertThat(job.now()).isBetween("2026-11-23T10:00:00Z", "2026-12-24T12:00:00Z");
    var state = job.state();
    assertThat(state.setups()).hasSize(job.shotList().setups().size());
    assertThat(job.warnings())
        .allMatch(line -> line.chars().noneMatch(c -> c < 0x20))
        .hasSizeLessThan(500);
    for (var path : List.of(job.framesFolder(), job.folder("frames"))) {
      assertThat(path.startsWith(job.folder())).isTrue();
    }
    var scan = job.scan();
    var standing = job.standing(scan);
    assertThat(standing.state().spans()).isEqualTo(state.spans());
    job.frameNames(scan)
        .requests()
        .forEach(
            request -> {
              assertThat(job.folder().resolve(request.to()).normalize().startsWith(job.folder()))
                  .isTrue();
              assertThat(job.folder().resolve(request.from()).normalize().startsWith(job.folder()))
                  .isTrue();
            });
    job.inOrder(scan);
    job.selects(scan);
    if (!job.shotList().setups().isEmpty()) {
      var setup = job.shotList().setups().getFirst();
      job.missing(setup, standing.tally());
      var marked = job.mark(setup.code(), SetupState.SHOT, MarkDetails.NONE);
      if (!isAtTheEndOfTime(job)) {
        assertThat(marked.of(setup.code()).state()).isEqualTo(SetupState.SHOT);
      }
      job.lastTick();
      job.takeBack();
    }
    job.reorder(job.shotList().codes().reversed());
    job.importList(new ShotList(List.of(new Setup("5", "New"))));
    assertThat(job.shotList().codes()).contains("5");
    var again = Job.open(folder, clock, DESK);
    assertThat(again.state()).isEqualTo(job.state());
  }

  /** Whether an event has the last stamp that there is, behind which nothing can be put. */
  private static boolean isAtTheEndOfTime(Job job) throws IOException {
    try (var logs = Files.newDirectoryStream(job.folder().resolve(".framewright/log"), "*.jsonl")) {
      for (var log : logs) {
        if (Files.isRegularFile(log)
            && Files.readString(log, StandardCharsets.ISO_8859_1)
                .contains("\"count\":2147483647")) {
          return true;
        }
      }
    }
    return false;
  }

  private void spoil(Path folder, Random random) throws IOException {
    var own = folder.resolve(".framewright");
    var log = own.resolve("log");
    if (Files.isSymbolicLink(own) || Files.isSymbolicLink(log)) {
      return; // What was put there already leads out; nothing may be spoilt through it.
    }
    var one = log.resolve(random.nextBoolean() ? "desk.jsonl" : "other.jsonl");
    switch (random.nextInt(14)) {
      case 0 -> change(own.resolve("convention.yaml"), random);
      case 1 -> change(log.resolve("desk.jsonl"), random);
      case 2 -> write(one, bytes(random));
      case 3, 4, 5, 6, 7, 8 -> {
        for (int i = random.nextInt(20); i >= 0 && !Files.isSymbolicLink(one); i--) {
          Lines.append(one, Lines.sealed(event(random)));
        }
      }
      case 9 -> replace(pick(random, targets(folder)), true, random);
      case 10 -> replace(pick(random, targets(folder)), false, random);
      case 11 -> {
        if (!Files.isRegularFile(own.resolve("convention.yaml"), LinkOption.NOFOLLOW_LINKS)) {
          return;
        }
        var text = Files.readString(own.resolve("convention.yaml"));
        var odd = pick(random, TEXTS).replaceAll("(.{200}).*", "$1");
        write(
            own.resolve("convention.yaml"),
            text.replace(pick(random, List.of("01_frames", "02/selects", "Small")), '"' + odd + '"')
                .getBytes(StandardCharsets.UTF_8));
      }
      case 12 -> {
        for (var name : List.of("handoffs/0001.json", "renames/1.jsonl", "lists/1.csv", "log/x")) {
          Files.createDirectories(own.resolve(name).getParent());
          write(own.resolve(name), bytes(random));
        }
      }
      default ->
          Files.deleteIfExists(
              pick(random, List.of(log.resolve("desk.jsonl"), own.resolve("convention.yaml"))));
    }
  }

  private static List<Path> targets(Path folder) {
    var own = folder.resolve(".framewright");
    return List.of(
        own,
        own.resolve("convention.yaml"),
        own.resolve("log"),
        own.resolve("log/desk.jsonl"),
        own.resolve("log/laptop.jsonl"),
        own.resolve("log/laptop.lock"),
        own.resolve("log/other.jsonl"));
  }

  /** Puts a link or a folder in place of something. */
  private void replace(Path path, boolean link, Random random) throws IOException {
    if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
      OwnFolder.remove(path);
    }
    if (!Files.isDirectory(path.getParent())) {
      return;
    }
    if (link) {
      Files.createSymbolicLink(
          path,
          pick(
              random,
              List.of(
                  canary,
                  Path.of("/dev/zero"),
                  path,
                  root.resolve("nowhere"),
                  template.resolve(".framewright/log"),
                  template.resolve(".framewright/convention.yaml"),
                  Path.of("/"))));
    } else {
      Files.createDirectory(path);
    }
  }

  private static byte[] bytes(Random random) {
    var bytes =
        switch (random.nextInt(5)) {
          case 0 -> new byte[random.nextInt(300)];
          case 1 -> "\n".repeat(random.nextInt(3_000)).getBytes(StandardCharsets.UTF_8);
          case 2 -> "[".repeat(100_000).getBytes(StandardCharsets.UTF_8);
          case 3 -> Lines.sealed("{\"a\":" + "[".repeat(10_000)).getBytes(StandardCharsets.UTF_8);
          default -> new byte[random.nextInt(5_000)];
        };
    if (random.nextBoolean() && bytes.length < 6_000) {
      random.nextBytes(bytes);
    }
    return bytes;
  }

  /** Changes, doubles or takes out some bytes. */
  private static void change(Path file, Random random) throws IOException {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    var text = new StringBuilder(Files.readString(file, StandardCharsets.ISO_8859_1));
    for (int i = random.nextInt(4); i >= 0 && !text.isEmpty(); i--) {
      int at = random.nextInt(text.length());
      int to = Math.min(text.length(), at + random.nextInt(80));
      switch (random.nextInt(4)) {
        case 0 -> text.setCharAt(at, (char) random.nextInt(256));
        case 1 -> text.delete(at, to);
        case 2 -> text.insert(at, text.substring(at, to));
        default ->
            text.insert(
                at,
                pick(random, List.of("[", "{", "\0", "\n", "&a ", "*a", "../", "\u00ff", "- ")));
      }
    }
    write(file, text.toString().getBytes(StandardCharsets.ISO_8859_1));
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        ? Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        : Files.isDirectory(file.getParent(), LinkOption.NOFOLLOW_LINKS)) {
      Files.write(file, bytes, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
    }
  }

  private static String event(Random random) {
    var odd = random.nextInt(4) == 0;
    return "{\"station\":\"%s\",\"number\":%s,\"time\":\"%s\",\"count\":%s,\"clock\":\"%s\",\"type\":%s"
        .formatted(
            odd ? pick(random, TEXTS) : "other",
            odd ? pick(random, NUMBERS) : "" + (1 + random.nextInt(9)),
            pick(random, odd ? TIMES : TIMES.subList(0, 5)),
            odd ? pick(random, NUMBERS) : "" + random.nextInt(1_000),
            pick(random, odd ? TIMES : TIMES.subList(0, 5)),
            body(random));
  }

  private static String body(Random random) {
    var text = quoted(random);
    var frames = "\"frames\":[%s,\"a\",%s]".formatted(quoted(random), pick(random, NUMBERS));
    return switch (random.nextInt(8)) {
      case 0 ->
          "\"began\",\"values\":{%s:%s,\"title\":%s}"
              .formatted(quoted(random), text, quoted(random));
      case 1 ->
          ("\"list-changed\",\"put\":[{\"code\":%s,\"title\":%s,\"views\":[{\"code\":%s,\"frames\":%s}],"
                  + "\"framesWanted\":%s,\"columns\":{%s:%s}},{\"code\":%s,\"title\":\"\"}],"
                  + "\"removed\":[%s],\"order\":[%s,%s]")
              .formatted(
                  text,
                  quoted(random),
                  quoted(random),
                  pick(random, NUMBERS),
                  pick(random, NUMBERS),
                  quoted(random),
                  quoted(random),
                  quoted(random),
                  quoted(random),
                  quoted(random),
                  text);
      case 2, 3 ->
          "\"marked\",\"setup\":%s,\"state\":\"%s\",\"by\":%s,\"view\":%s,\"reason\":%s"
              .formatted(
                  text,
                  pick(
                      random,
                      List.of("on-set", "on-set", "shot", "signed-off", "pickup", "dropped", "x")),
                  quoted(random),
                  quoted(random),
                  quoted(random));
      case 4 ->
          "\"taken-back\",\"event\":{\"station\":\"desk\",\"time\":\"%s\",\"count\":%s}"
              .formatted(pick(random, TIMES), pick(random, NUMBERS));
      case 5 -> "\"arrived\"," + frames;
      case 6 -> "\"moved\",\"setup\":%s,\"by\":%s,%s".formatted(text, quoted(random), frames);
      case 7 ->
          "\"rated\",\"rating\":%s,\"by\":%s,%s".formatted(pick(random, NUMBERS), text, frames);
      default ->
          "\"selected\",\"selected\":%s,\"by\":%s,%s".formatted(random.nextBoolean(), text, frames);
    };
  }

  private static String quoted(Random random) {
    return '"' + pick(random, TEXTS) + '"';
  }

  private static <T> T pick(Random random, List<T> from) {
    return from.get(random.nextInt(from.size()));
  }

  private void copy(Path to) throws IOException {
    try (var files = Files.walk(template)) {
      for (var file : files.toList()) {
        Files.copy(
            file,
            to.resolve(template.relativize(file)),
            StandardCopyOption.COPY_ATTRIBUTES,
            LinkOption.NOFOLLOW_LINKS);
      }
    }
  }

  /** Runs cases one after the other; says of a failing one which it was. */
  void areHarmless(long first, int count) {
    var failed = new TreeMap<Long, Throwable>();
    for (long seed = first; seed < first + count && failed.size() < 5; seed++) {
      try {
        isHarmless(seed);
      } catch (Throwable e) {
        failed.put(seed, e);
      }
    }
    var failures = new ArrayList<>(failed.values());
    if (!failures.isEmpty()) {
      var all = new AssertionError("cases " + failed.keySet(), failures.getFirst());
      failures.stream().skip(1).forEach(all::addSuppressed);
      throw all;
    }
  }
}
