package org.framewright.installer;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/**
 * What a package puts below the root of a Linux system. Nothing is done when it is installed or
 * removed: the menu, the icons and the manual are found by the systems' own triggers on these
 * folders, where there is a desktop, and nothing fails where there is none.
 */
final class LinuxTree {
  static final String HOME = "usr/lib/framewright";
  private static final String NAME = "framewright";
  private static final List<Integer> ICONS = List.of(16, 24, 32, 48, 64, 128, 256, 512);

  private LinuxTree() {}

  /**
   * Lays it out anew.
   *
   * @param zsh where this kind of system has completions of zsh, below usr/share/zsh
   */
  static Path lay(Release release, Home home, String name, String zsh) throws IOException {
    var root = Folders.empty(release.work(name));
    Folders.copy(home.folder(), root.resolve(HOME), Home::withoutSystemPlaces);
    command(root);
    menu(release, root.resolve("usr/share"));
    manuals(home, root.resolve("usr/share/man/man1"));
    var share = root.resolve("usr/share");
    completion(home, "framewright.bash", share.resolve("bash-completion/completions/" + NAME));
    completion(home, "_framewright", share.resolve("zsh").resolve(zsh).resolve("_framewright"));
    completion(
        home, "framewright.fish", share.resolve("fish/vendor_completions.d/framewright.fish"));
    return root;
  }

  private static void command(Path root) throws IOException {
    var link = root.resolve("usr/bin").resolve(NAME);
    Files.createDirectories(link.getParent());
    Files.createSymbolicLink(link, Path.of("../lib/framewright/bin/framewright"));
  }

  private static void menu(Release release, Path share) throws IOException {
    copy(
        release.resource("framewright.desktop"), share.resolve("applications/framewright.desktop"));
    var description = Files.readString(release.resource("metainfo.xml"), UTF_8);
    write(
        share.resolve("metainfo/org.framewright.Framewright.metainfo.xml"),
        description
            .replace("@version@", release.ordered())
            .replace("@date@", release.time().toString().substring(0, 10)));
    var icons = share.resolve("icons/hicolor");
    copy(release.resource("icons/framewright.svg"), icons.resolve("scalable/apps/framewright.svg"));
    for (int size : ICONS) {
      copy(
          release.resource("icons/framewright-" + size + ".png"),
          icons.resolve(size + "x" + size + "/apps/framewright.png"));
    }
  }

  private static void manuals(Home home, Path man) throws IOException {
    if (!Files.isDirectory(home.manuals())) {
      return;
    }
    try (var pages = Files.list(home.manuals())) {
      for (var page : pages.filter(path -> path.toString().endsWith(".1")).toList()) {
        packed(page, man.resolve(page.getFileName() + ".gz"));
      }
    }
  }

  private static void completion(Home home, String from, Path to) throws IOException {
    var file = home.completions().resolve(from);
    if (Files.exists(file)) {
      copy(file, to);
    }
  }

  /** Packed by gzip, which is given no name and no time. */
  static void packed(Path from, Path to) throws IOException {
    Files.createDirectories(to.getParent());
    try (var out = new GZIPOutputStream(Files.newOutputStream(to))) {
      Files.copy(from, out);
    }
  }

  static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to.getParent());
    Files.copy(from, to);
  }

  static void write(Path to, String text) throws IOException {
    Files.createDirectories(to.getParent());
    Files.writeString(to, text, UTF_8);
  }
}
