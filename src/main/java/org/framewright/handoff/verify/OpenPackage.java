package org.framewright.handoff.verify;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.framewright.base.FileProblems;
import org.framewright.base.Progress;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.mhl.MhlHistory;

/**
 * A folder with lists of checksums of what is in it, from us or from somebody else. Its lists were
 * read and its names looked at; nothing else yet.
 */
public final class OpenPackage {
  private static final int LARGEST_TEXT = 64 << 20;
  private static final int LARGEST_DECLARATION = 1 << 16;
  private static final long LARGEST_TEXTS = 128L << 20;

  private final Plan plan;

  private OpenPackage(Plan plan) {
    this.plan = plan;
  }

  /**
   * Opens a package. Links in it are not followed, and nothing outside of it is ever read.
   *
   * @return nothing where the folder has none of the lists that are known here at its top
   */
  public static Optional<OpenPackage> in(Path folder) throws IOException {
    var real = folder.toRealPath();
    if (!Files.isDirectory(real)) {
      throw new NotDirectoryException(folder.toString());
    }
    var kind = kind(real);
    return kind.isPresent()
        ? Optional.of(new OpenPackage(plan(real, kind.get(), Listing.of(real))))
        : Optional.empty();
  }

  /** Reads a package to its end; nothing where the folder is none. */
  public static Optional<PackageCheck> check(Path folder) throws IOException {
    return in(folder).flatMap(one -> new FileReading(one.plan, Progress.NONE).run());
  }

  /** What the lists and the names alone say; no file was compared. */
  public PackageCheck known() {
    return plan.known();
  }

  /** Reads every file that a list names, and compares it; tells of it in mebibytes. */
  public Verified read(Progress progress) {
    return new FileReading(plan, progress)
        .run()
        .<Verified>map(Verified.Read::new)
        .orElseGet(Verified.Cancelled::new);
  }

  /** Whether a file at the top of a package describes it, and is no part of what was packed. */
  public static boolean isPaper(String name) {
    var small = name.toLowerCase(Locale.ROOT);
    return BagPlan.isRead(small) || ListPlan.kind(small).isPresent() || MhlHistory.isPart(small);
  }

  /** A bag has checksums of all the others; a history says more than a list. */
  private static Optional<PackageCheck.Kind> kind(Path folder) throws IOException {
    boolean bag = Files.exists(folder.resolve(Declaration.FILE), LinkOption.NOFOLLOW_LINKS);
    boolean data = Files.isDirectory(folder.resolve(BagPlan.DATA), LinkOption.NOFOLLOW_LINKS);
    boolean lists = false;
    try (var names = Files.newDirectoryStream(folder)) {
      for (var path : names) {
        var name = path.getFileName().toString();
        bag |= data && BagPlan.isPayloadManifest(name);
        lists |=
            ListPlan.kind(name).isPresent() && Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS);
      }
    }
    if (bag) {
      return Optional.of(PackageCheck.Kind.BAGIT);
    }
    if (Files.isDirectory(folder.resolve(MhlHistory.FOLDER), LinkOption.NOFOLLOW_LINKS)) {
      return Optional.of(PackageCheck.Kind.MHL);
    }
    return lists ? Optional.of(PackageCheck.Kind.SHA256SUM) : Optional.empty();
  }

  private static Plan plan(Path folder, PackageCheck.Kind kind, Listing listing) {
    var findings = new Findings();
    if (!listing.isAll()) {
      findings.fault(Text.of("there are more files than can be looked at"), "");
    }
    return switch (kind) {
      case BAGIT -> {
        listing.others().values().forEach(findings::fault);
        yield BagPlan.of(texts(folder, listing, BagPlan::isRead, findings), listing, findings);
      }
      case MHL -> MhlPlan.of(folder, listing, findings);
      case SHA256SUM ->
          ListPlan.of(
              texts(folder, listing, name -> ListPlan.kind(name).isPresent(), findings),
              listing,
              findings);
    };
  }

  /** The texts at the top of a folder that describe what is in it. */
  private static SortedMap<String, byte[]> texts(
      Path folder, Listing listing, Predicate<String> wanted, Findings findings) {
    var texts = new TreeMap<String, byte[]>();
    var names = new TreeSet<>(listing.files().keySet());
    names.addAll(listing.folders()); // Whoever reads one is told what it is.
    long bytes = 0;
    for (var name : names) {
      if (name.indexOf('/') >= 0 || !wanted.test(name)) {
        continue;
      }
      int most = name.equals(Declaration.FILE) ? LARGEST_DECLARATION : LARGEST_TEXT;
      try {
        var text = SmallFiles.read(folder.resolve(name), most, LinkOption.NOFOLLOW_LINKS);
        bytes += text.length;
        if (bytes > LARGEST_TEXTS) {
          findings.fault(Text.of("its lists are larger than can be looked at"), name);
          return texts;
        }
        texts.put(name, text);
      } catch (IOException e) {
        findings.fault(FileProblems.of(e).at(name));
      }
    }
    return texts;
  }
}
