package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

/**
 * What a package's own manifests say of its files. Read by RFC 8493, sections 2 and 3, as far as
 * SHA-256 goes.
 *
 * @param files how many files were compared
 * @param missing files that a manifest names and that are not there
 * @param different files whose content is not what the manifest says
 * @param unlisted payload files that no manifest names
 * @param faults what is wrong with the manifests themselves, by file and line
 */
public record BagCheck(
    int files,
    List<String> missing,
    List<String> different,
    List<String> unlisted,
    List<Problem> faults) {
  private static final String MANIFEST = "manifest-sha256.txt";
  private static final String TAG_MANIFEST = "tagmanifest-sha256.txt";
  private static final int LARGEST = 32 << 20;
  private static final int MOST_FAULTS = 100;

  /** RFC 8493, section 2.1.3; some programs write an asterisk before the name. */
  private static final Pattern LINE = Pattern.compile("([0-9A-Fa-f]{64})[ \t]+\\*?(?:\\./)?(.+)");

  private static final Pattern CODED = Pattern.compile("%(0[AaDd]|25)");

  public BagCheck {
    missing = List.copyOf(missing);
    different = List.copyOf(different);
    unlisted = List.copyOf(unlisted);
    faults = List.copyOf(faults);
  }

  /** Whether all files are there, are what they were, and are all that is there. */
  public boolean clean() {
    return missing.isEmpty() && different.isEmpty() && unlisted.isEmpty() && faults.isEmpty();
  }

  /** Whether a folder is a bag with a manifest that this check reads. */
  public static boolean isBag(Path folder) {
    return Files.isRegularFile(folder.resolve("bagit.txt"), LinkOption.NOFOLLOW_LINKS)
        && Files.isRegularFile(folder.resolve(MANIFEST), LinkOption.NOFOLLOW_LINKS);
  }

  /** Reads every file of a bag again; links are not followed. */
  public static BagCheck of(Path bag) throws IOException {
    return new Reader(bag.toRealPath()).check();
  }

  private static final class Reader {
    private final Path bag;
    private final List<String> missing = new ArrayList<>();
    private final List<String> different = new ArrayList<>();
    private final List<String> unlisted = new ArrayList<>();
    private final List<Problem> faults = new ArrayList<>();

    private Reader(Path bag) {
      this.bag = bag;
    }

    private BagCheck check() throws IOException {
      var payload = manifest(MANIFEST);
      var listed = new TreeMap<>(payload);
      if (Files.exists(bag.resolve(TAG_MANIFEST), LinkOption.NOFOLLOW_LINKS)) {
        listed.putAll(manifest(TAG_MANIFEST));
      }
      listed.forEach(this::compare);
      look(new TreeSet<>(payload.keySet()));
      return new BagCheck(listed.size(), missing, different, unlisted, faults);
    }

    private void compare(String name, String checksum) {
      var file = bag.resolve(name);
      try {
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
            || !file.toRealPath().startsWith(bag)) {
          missing.add(name);
        } else if (!Checksum.of(file).equals(checksum)) {
          different.add(name);
        }
      } catch (IOException e) {
        fault(FileProblems.of(e).what(), file.toString());
      }
    }

    private void look(Set<String> listed) throws IOException {
      var data = bag.resolve("data");
      if (!Files.isDirectory(data, LinkOption.NOFOLLOW_LINKS)) {
        return;
      }
      var below = FolderFiles.below(data);
      for (var file : below.files()) {
        var name = "data/" + file.name();
        if (!listed.contains(name) && !isListedOtherwise(file.path(), name, listed)) {
          unlisted.add(name);
        }
      }
      for (var other : below.others()) {
        fault(other.problem().what(), "data/" + other.name());
      }
      if (!below.all()) {
        fault("there are more files than can be looked at", data.toString());
      }
    }

    /**
     * Whether a manifest names this very file with its accents written in the other way, which some
     * volumes change; RFC 8493 warns of it.
     */
    private boolean isListedOtherwise(Path file, String name, Set<String> listed)
        throws IOException {
      for (var form : Normalizer.Form.values()) {
        var other = Normalizer.normalize(name, form);
        if (listed.contains(other)) {
          var found = bag.resolve(other);
          return Files.exists(found, LinkOption.NOFOLLOW_LINKS) && Files.isSameFile(found, file);
        }
      }
      return false;
    }

    private SequencedMap<String, String> manifest(String called) {
      var checksums = new TreeMap<String, String>();
      try {
        var text = BoundedFile.read(bag.resolve(called), LARGEST, LinkOption.NOFOLLOW_LINKS);
        if (text.isEmpty()) {
          fault("this manifest is too large", called);
          return checksums;
        }
        for (var line : BoundedFile.lines(text.get())) {
          read(line, called + ", line " + line.number(), checksums);
        }
      } catch (IOException e) {
        fault(FileProblems.of(e).what(), called);
      }
      return checksums;
    }

    private void read(BoundedFile.Line line, String where, SequencedMap<String, String> checksums) {
      if (line.text().isEmpty()) {
        fault("this line is no UTF-8 text", where);
        return;
      }
      var match = LINE.matcher(line.text().get());
      if (!match.matches()) {
        if (!line.text().get().isBlank()) {
          fault("this line is not a SHA-256 and a path", where);
        }
        return;
      }
      var name = decoded(match.group(2));
      if (!PayloadName.staysInside(name)) {
        fault("this path leads out of the package", where);
      } else if (checksums.putIfAbsent(name, match.group(1).toLowerCase(Locale.ROOT)) != null) {
        fault("this file is listed twice", where);
      }
    }

    private void fault(String what, String where) {
      if (faults.size() < MOST_FAULTS) {
        faults.add(new Problem(what, where, "Ask for the package again, or for this file."));
      }
    }
  }

  /** RFC 8493, section 2.1.3: line ends and the percent sign are coded, nothing else is. */
  private static String decoded(String path) {
    return CODED
        .matcher(path)
        .replaceAll(
            code ->
                switch (code.group(1).toUpperCase(Locale.ROOT)) {
                  case "0A" -> "\n";
                  case "0D" -> "\r";
                  default -> "%";
                });
  }
}
