package org.framewright.installer;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** For Debian, Ubuntu and those made from them. */
record Deb() implements Format {
  @Override
  public String name() {
    return "deb";
  }

  @Override
  public String tool() {
    return "dpkg-deb";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool dpkg) throws IOException {
    var root = LinuxTree.lay(release, home, "deb", "vendor-completions");
    var papers = root.resolve("usr/share/doc/framewright");
    LinuxTree.copy(release.resource("deb/copyright"), papers.resolve("copyright"));
    LinuxTree.packed(home.folder().resolve("CHANGELOG.md"), papers.resolve("changelog.gz"));
    control(release, root);
    Stamp.put(root, release.time());
    var file =
        release
            .output()
            .resolve("framewright_" + release.ordered() + "_" + Machine.debian() + ".deb");
    dpkg.run(
        release.output(),
        List.of(
            "--root-owner-group", "-Zzstd", "-z12", "--build", root.toString(), file.toString()));
    return new Outcome.Made(file);
  }

  private static void control(Release release, Path root) throws IOException {
    var files = files(root);
    var kibibytes = 0L;
    for (var file : files) {
      kibibytes += (Files.size(file) + 1023) / 1024;
    }
    var control =
        Files.readString(release.resource("deb/control"), UTF_8)
            .replace("@version@", release.ordered())
            .replace("@processor@", Machine.debian())
            .replace("@size@", Long.toString(kibibytes));
    LinuxTree.write(root.resolve("DEBIAN/control"), control);
    LinuxTree.write(root.resolve("DEBIAN/md5sums"), sums(root, files));
  }

  private static List<Path> files(Path root) throws IOException {
    try (var paths = Files.walk(root)) {
      return paths
          .filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
          .sorted()
          .toList();
    }
  }

  /** What debsums compares an installed system with; no guard against anybody. */
  private static String sums(Path root, List<Path> files) throws IOException {
    var lines = new StringBuilder();
    for (var file : files) {
      lines.append(md5(file)).append("  ").append(root.relativize(file)).append('\n');
    }
    return lines.toString();
  }

  private static String md5(Path file) throws IOException {
    try {
      var digest = MessageDigest.getInstance("MD5");
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(file)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
