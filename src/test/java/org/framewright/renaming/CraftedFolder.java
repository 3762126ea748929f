package org.framewright.renaming;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * A folder whose journals somebody made on purpose: names that lead out of it, links, pipes and
 * folders where files are meant, numbers out of all bounds, bytes that are no text; many with
 * checksums that hold. What lies outside must stay as it is, and no content inside may be lost.
 */
public final class CraftedFolder implements AutoCloseable {
  private static final String[] NAMES = {
    "\"..\"",
    "\".\"",
    "\"\"",
    "\"/etc/passwd\"",
    "\"../outside/victim\"",
    "\"a/b\"",
    "\"a\\u0000b\"",
    "\"\\ud800\"",
    "\"\\u001b[2J\"",
    "\"\\n\"",
    "\"a\"",
    "\"b\"",
    "\"c\"",
    "\"link\"",
    "\"sub\"",
    "\"pipe\"",
    "\".framewright\"",
    "\"fw-0001-0a1b2c3d-0.tmp\"",
    "7",
    "null",
    "[]",
    "{}",
    "true",
    "\"\\ud83d\\ude00\"",
    "{\"bytes\":\"Li4=\"}",
    "{\"bytes\":\"Lw==\"}",
    "{\"bytes\":\"AA==\"}",
    "{\"bytes\":\"//8=\"}",
    "{\"bytes\":\"!\"}",
    "{\"bytes\":7}",
    "{\"bytes\":\"\"}",
    "{\"bytes\":null,\"more\":1}",
    "{\"none\":\"\"}",
  };
  private static final String[] NUMBERS = {
    "0",
    "1",
    "-1",
    "3",
    "9223372036854775807",
    "-9223372036854775808",
    "99999999999999999999",
    "1e400",
    "0.5",
    "2147483648",
    "4194304",
    "\"0\"",
    "null",
    "[1]",
    "{}",
  };
  private static final String[] TEXTS = {
    "\"\"",
    "\"x\"",
    "\"\\u0007\"",
    "7",
    "null",
    "[]",
    "{\"a\":{}}",
    "\"0001-0a1b2c3d\"",
    "\"0002-0a1b2c3d\"",
    "\"native\"",
    "\"done\"",
    "\"-1000000000-01-01T00:00:00Z\"",
    "\"+1000000000-12-31T23:59:59.999999999Z\"",
    "\"2026-11-25T09:30:00Z\"",
    "\"fw-0001-0a1b2c3d-1.tmp\"",
    "\"fw-0001-0a1b2c3d-1.tmp/../../x\"",
  };
  private static final String[] FOLDERS = {
    "[[]]", "[]", "[[],[]]", "[[\"sub\"]]", "[[\"..\"]]", "[[\"link\"]]",
        "[[\"sub\",\"..\",\"..\"]]",
    "[[\"/\"]]", "[[\".framewright\",\"renames\"]]", "[[\"a\"]]", "[[\"pipe\"]]", "[[\"none\"]]",
        "[\"sub\"]", "{}",
    "7", "null", "[[[[]]]]", "[[\"loop\"]]", "[[],[\"sub\"]]",
  };

  private final Random random;
  private final Path scratch;
  private final Path outside;
  private final Path root;
  private final Path journals;
  private final Path pipe;

  private CraftedFolder(Path scratch, Path pipe, long seed) throws IOException {
    this.random = new Random(seed);
    this.scratch = scratch;
    this.pipe = pipe;
    this.outside = Files.createDirectory(scratch.resolve("outside"));
    this.root = Files.createDirectory(scratch.resolve("root"));
    this.journals = root.resolve(".framewright/renames");
  }

  /** A pipe to link into folders; null where the system makes none. */
  public static Path pipe(Path folder) throws IOException, InterruptedException {
    var pipe = folder.resolve("pipe");
    try {
      var made = new ProcessBuilder("mkfifo", pipe.toString()).start();
      return made.waitFor(30, TimeUnit.SECONDS) && made.exitValue() == 0 ? pipe : null;
    } catch (IOException e) {
      return null; // A system without pipes in folders.
    }
  }

  /** Makes a folder below an existing one; the seed says how. */
  public static CraftedFolder make(Path below, Path pipe, long seed) throws IOException {
    var crafted = new CraftedFolder(Files.createTempDirectory(below, "crafted"), pipe, seed);
    crafted.files();
    crafted.journals();
    return crafted;
  }

  public Path root() {
    return root;
  }

  private void files() throws IOException {
    Files.writeString(outside.resolve("victim"), "outside");
    Files.createDirectory(root.resolve("sub"));
    for (var name : List.of("a", "b", "c", "sub/a")) {
      Files.writeString(root.resolve(name), name);
    }
    Files.createSymbolicLink(root.resolve("link"), outside);
    Files.createSymbolicLink(root.resolve("loop"), Path.of("loop"));
    if (pipe != null) {
      Files.createLink(root.resolve("pipe"), pipe);
    }
  }

  private void journals() throws IOException {
    switch (random.nextInt(24)) {
      case 0 -> Files.createSymbolicLink(root.resolve(".framewright"), outside);
      case 1 -> Files.writeString(root.resolve(".framewright"), "a file");
      case 2 -> Files.createSymbolicLink(ours("renames"), outside);
      case 3 -> Files.writeString(ours("renames"), "a file");
      case 4 -> Files.createSymbolicLink(ours("renames"), Path.of("renames"));
      case 5 -> {
        if (pipe != null) {
          Files.createLink(ours("renames"), pipe);
        }
      }
      default -> {
        Files.createDirectories(journals);
        lock();
        for (int i = random.nextInt(3); i >= 0; i--) {
          journal(String.format("%04d-0a1b2c3d", 1 + random.nextInt(3)));
        }
      }
    }
  }

  private Path ours(String name) throws IOException {
    return Files.createDirectory(root.resolve(".framewright")).resolve(name);
  }

  private void lock() throws IOException {
    odd(journals.resolve("lock"), random.nextInt(16));
    odd(journals.resolve("probe-a"), random.nextInt(20));
    odd(journals.resolve("0001-0a1b2c3d.tmp"), random.nextInt(12));
    odd(journals.resolve("notes.tmp"), random.nextInt(12));
  }

  /** Something that is no plain file; false if nothing was made. */
  private boolean odd(Path file, int kind) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return true;
    }
    switch (kind) {
      case 0 -> Files.createSymbolicLink(file, outside.resolve("victim"));
      case 1 -> Files.createSymbolicLink(file, outside.resolve("new"));
      case 2 -> Files.createDirectory(file);
      case 3 -> Files.writeString(Files.createDirectory(file).resolve("inside"), "kept");
      case 4 -> {
        if (pipe == null) {
          return false;
        }
        Files.createLink(file, pipe);
      }
      case 5 -> Files.writeString(file, "");
      default -> {
        return false;
      }
    }
    return true;
  }

  private void journal(String id) throws IOException {
    var file = journals.resolve(id + ".jsonl");
    if (!odd(file, random.nextInt(40))) {
      Files.write(file, spoilt(content(id)));
    }
  }

  private byte[] content(String id) {
    var lines = new ArrayList<String>();
    int renames = 1 + random.nextInt(3);
    lines.add(
        "{\"framewright\":"
            + mostly("\"renames\"", TEXTS)
            + ",\"version\":"
            + mostly("1", NUMBERS)
            + ",\"batch\":"
            + mostly("\"" + id + "\"", TEXTS)
            + ",\"at\":"
            + mostly("\"2026-11-25T09:30:00Z\"", TEXTS)
            + ",\"undoes\":"
            + mostly("\"\"", TEXTS)
            + ",\"guarantee\":"
            + mostly("\"native\"", TEXTS)
            + ",\"volume\":"
            + mostly("\"ext4\"", TEXTS)
            + (random.nextBoolean() ? ",\"home\":" + mostly("\"1@1\"", TEXTS) : "")
            + ",\"folders\":"
            + mostly("[[],[\"sub\"]]", FOLDERS)
            + ",\"renames\":"
            + mostly(Integer.toString(renames), NUMBERS));
    for (int i = 0; i < renames; i++) {
      lines.add(rename());
    }
    var all = new ByteArrayOutputStream();
    all.writeBytes(JournalForge.sealed(lines));
    if (random.nextInt(3) > 0) {
      var text = all.toString(StandardCharsets.UTF_8);
      var commit = text.substring(text.lastIndexOf("{\"commit\":") + 10);
      all.writeBytes(
          JournalForge.closed(
              "{\"end\":"
                  + mostly("\"done\"", TEXTS)
                  + ",\"at\":"
                  + mostly("\"2026-11-25T09:30:01Z\"", TEXTS)
                  + ",\"commit\":"
                  + mostly(commit.substring(0, 66), TEXTS)));
    }
    return all.toByteArray();
  }

  private String rename() {
    var from = "\"" + "abc".charAt(random.nextInt(3)) + "\"";
    var to = "\"" + "abcxyz".charAt(random.nextInt(6)) + "\"";
    return "{\"in\":"
        + mostly("0", NUMBERS)
        + ",\"from\":"
        + mostly(from, NAMES)
        + (random.nextInt(4) == 0 ? ",\"into\":" + mostly("1", NUMBERS) : "")
        + ",\"to\":"
        + mostly(to, NAMES)
        + (random.nextInt(4) == 0 ? ",\"temp\":" + mostly("\"fw-0001-0a1b2c3d-0.tmp\"", TEXTS) : "")
        + (random.nextInt(4) == 0 ? ",\"group\":" + mostly("\"g\"", TEXTS) : "")
        + ",\"size\":"
        + mostly("1", NUMBERS)
        + ",\"modified\":"
        + mostly("1795000000000000000", NUMBERS)
        + ",\"key\":"
        + mostly("\"131\"", TEXTS)
        + (random.nextInt(6) == 0 ? ",\"hash\":" + mostly("\"00\"", TEXTS) : "")
        + (random.nextInt(30) == 0 ? ",\"more\":" + "[".repeat(3_000) : "")
        + (random.nextInt(30) == 0 ? ",\"group\":\"" + "x".repeat(300_000) + "\"" : "");
  }

  private String mostly(String good, String[] bad) {
    return random.nextInt(14) == 0 ? bad[random.nextInt(bad.length)] : good;
  }

  /** Now and then bytes that are no text, or less than all. */
  private byte[] spoilt(byte[] content) {
    switch (random.nextInt(16)) {
      case 0 -> {
        var noise = new byte[random.nextInt(4_096)];
        random.nextBytes(noise);
        return noise;
      }
      case 1 -> {
        content[random.nextInt(content.length)] = (byte) random.nextInt(256);
        return content;
      }
      case 2 -> {
        return Arrays.copyOf(content, random.nextInt(content.length));
      }
      case 3 -> {
        return new String(content, StandardCharsets.UTF_8).getBytes(StandardCharsets.UTF_16);
      }
      case 4 -> {
        return new byte[300_000];
      }
      case 5 -> {
        // A line that claims to be UTF-32, closed with a checksum that holds.
        return JournalForge.sealed(List.of("{\0\0\0\"\0\0\0", "\0\0\0{"));
      }
      case 6 -> {
        return Base64.getEncoder().encode(content);
      }
      default -> {
        return content;
      }
    }
  }

  /** Path to content of everything outside the folder. */
  public Map<String, String> outside() throws IOException {
    return contents(outside, outside.resolve("none"));
  }

  /** The contents of all files inside but our own, in order. */
  public List<String> inside() throws IOException {
    return contents(root, root.resolve(".framewright")).values().stream().sorted().toList();
  }

  private static Map<String, String> contents(Path folder, Path without) throws IOException {
    var files = new TreeMap<String, String>();
    try (var all = Files.walk(folder)) {
      for (var path : all.filter(path -> !path.startsWith(without)).toList()) {
        if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
          files.put(folder.relativize(path).toString(), Files.readString(path));
        }
      }
    }
    return files;
  }

  @Override
  public void close() throws IOException {
    try (var all = Files.walk(scratch)) {
      for (var path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
