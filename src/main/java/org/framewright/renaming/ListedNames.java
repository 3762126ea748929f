package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The names in a folder, found in the spelling in which the volume lists them. HFS+ and, seen from
 * a Mac, FAT and shares of Windows list letters with accents decomposed however they were written
 * (xnu, hfs_catalog.c, msdosfs_vnops.c, smb_converter.c); other volumes keep the spelling and take
 * both for one name, and Linux takes them for two. So a name in the other spelling counts where the
 * volume itself finds a file under the one that is asked for.
 */
final class ListedNames {
  private final Disk disk;
  private final Path folder;
  private final Set<String> exact = new HashSet<>();

  /** By the composed form of names that have other letters than those of ASCII. */
  private final Map<String, String> composed = new HashMap<>();

  private ListedNames(Disk disk, Path folder) {
    this.disk = disk;
    this.folder = folder;
  }

  static ListedNames of(Disk disk, Path folder) throws IOException {
    var names = new ListedNames(disk, folder);
    for (var name : disk.names(folder)) {
      var spelled = PathBytes.exact(name);
      names.exact.add(spelled);
      composed(name).ifPresent(form -> names.composed.put(form, spelled));
    }
    return names;
  }

  /** As the volume lists a name; empty if no file of the folder has it. */
  Optional<String> spelling(Path name) throws IOException {
    var asked = PathBytes.exact(name);
    if (exact.contains(asked)) {
      return Optional.of(asked);
    }
    var other = composed(name).map(composed::get);
    return other.isPresent()
            && exact.contains(other.get())
            && disk.look(folder.resolve(name)).kind() != Look.Kind.NONE
        ? other
        : Optional.empty();
  }

  /** Forgets a name whose file was removed. */
  void remove(Path name) {
    var asked = PathBytes.exact(name);
    if (!exact.remove(asked)) {
      composed(name).map(composed::get).ifPresent(exact::remove);
    }
  }

  /** Whether two names are one but for how their accents are written. */
  static boolean differInAccentsOnly(Path a, Path b) {
    var form = composed(a);
    return form.isPresent() && form.equals(composed(b)) && !PathBytes.same(a, b);
  }

  /** Empty for a name of ASCII, which has one form only, and for one that is no text. */
  private static Optional<String> composed(Path name) {
    var text = name.toString();
    return PathBytes.isText(name) && text.chars().anyMatch(c -> c >= 128)
        ? Optional.of(Normalizer.normalize(text, Normalizer.Form.NFC))
        : Optional.empty();
  }
}
