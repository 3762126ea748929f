package org.framewright.mhl;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Program;

/** A list as the schema of ASC MHL 1.0 has it. */
final class GenerationText {
  private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");
  private static final Instant LAST = Instant.parse("9999-12-31T23:59:59Z");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss'+00:00'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private final StringBuilder text = new StringBuilder(1 << 12);
  private final NewGeneration generation;
  private final String hashDate;

  private GenerationText(NewGeneration generation) {
    this.generation = generation;
    this.hashDate = TIME.format(generation.at());
  }

  /**
   * The document.
   *
   * @param actions of each file, its kinds of hashes and what was found
   * @param folders the hashes of folders of one kind, the top last; empty where not all is covered
   * @param ignored patterns of names that no list covers
   */
  static byte[] of(
      NewGeneration generation,
      Map<String, Map<HashKind, Generation.Action>> actions,
      HashKind kind,
      Optional<SequencedMap<String, FolderHashing.Both>> folders,
      List<String> ignored) {
    var written = new GenerationText(generation);
    written.head(kind, folders.map(all -> all.get(FolderHashing.TOP)), ignored);
    written.hashes(actions, kind, folders);
    return written.text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void line(String line) {
    text.append(line).append('\n');
  }

  private void head(HashKind kind, Optional<FolderHashing.Both> root, List<String> ignored) {
    line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    line("<hashlist version=\"2.0\" xmlns=\"" + GenerationReader.NAMESPACE + "\">");
    line("  <creatorinfo>");
    line("    <creationdate>" + hashDate + "</creationdate>");
    line("    <hostname>" + XmlText.of(generation.host()) + "</hostname>");
    line("    <tool version=\"" + Program.VERSION + "\">" + Program.NAME + "</tool>");
    line("  </creatorinfo>");
    line("  <processinfo>");
    line("    <process>" + generation.process().word() + "</process>");
    root.ifPresent(
        both -> {
          line("    <roothash>");
          both(kind, both);
          line("    </roothash>");
        });
    line("    <ignore>");
    ignored.forEach(pattern -> line("      <pattern>" + XmlText.of(pattern) + "</pattern>"));
    line("    </ignore>");
    line("  </processinfo>");
  }

  private void both(HashKind kind, FolderHashing.Both both) {
    line("      <content>" + hash(kind, both.content()) + "</content>");
    line("      <structure>" + hash(kind, both.structure()) + "</structure>");
  }

  private String hash(HashKind kind, byte[] value) {
    var name = kind.element();
    return "<" + name + " hashdate=\"" + hashDate + "\">" + kind.text(value) + "</" + name + ">";
  }

  private void hashes(
      Map<String, Map<HashKind, Generation.Action>> actions,
      HashKind kind,
      Optional<SequencedMap<String, FolderHashing.Both>> folders) {
    line("  <hashes>");
    generation.files().stream()
        .sorted(Comparator.comparing(NewGeneration.Sealed::path))
        .forEach(file -> file(file, actions.get(file.path())));
    folders.ifPresent(
        all ->
            all.forEach(
                (path, both) -> {
                  if (!path.equals(FolderHashing.TOP)) {
                    line("    <directoryhash>");
                    line("      <path>" + XmlText.of(path) + "</path>");
                    both(kind, both);
                    line("    </directoryhash>");
                  }
                }));
    line("  </hashes>");
    line("</hashlist>");
  }

  private void file(NewGeneration.Sealed file, Map<HashKind, Generation.Action> actions) {
    line("    <hash>");
    var time =
        file.modified().isBefore(FIRST) || file.modified().isAfter(LAST)
            ? ""
            : " lastmodificationdate=\"" + TIME.format(file.modified()) + "\"";
    line(
        "      <path size=\""
            + file.size()
            + "\""
            + time
            + ">"
            + XmlText.of(file.path())
            + "</path>");
    // The schema has the kinds in the order of the constants.
    new EnumMap<>(file.hashes())
        .forEach(
            (kind, value) ->
                line(
                    "      <"
                        + kind.element()
                        + " action=\""
                        + actions.get(kind).name().toLowerCase(Locale.ROOT)
                        + "\" hashdate=\""
                        + hashDate
                        + "\">"
                        + value
                        + "</"
                        + kind.element()
                        + ">"));
    line("    </hash>");
  }
}
