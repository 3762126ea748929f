package org.framewright.handoff.verify;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.MhlHistory;

/**
 * What the media hash lists in a folder and in those below it say. A history further in has its
 * files for itself, and the one further out the hashes of its lists.
 */
final class MhlPlan {
  private static final int MOST_HISTORIES = 1_000;
  private static final int MOST_ENTRIES = 4 * Listing.MOST;

  private final Path folder;
  private final Listing listing;
  private final Findings findings;
  private final IgnoredPaths ignored = new IgnoredPaths();
  private final List<String> lists = new ArrayList<>();
  private final Set<String> named = new TreeSet<>();
  private boolean closed;
  private int entries;

  private MhlPlan(Path folder, Listing listing, Findings findings) {
    this.folder = folder;
    this.listing = listing;
    this.findings = findings;
  }

  /** Plans the reading of a folder that has a history at its top. */
  static Plan of(Path folder, Listing listing, Findings findings) {
    return new MhlPlan(folder, listing, findings).plan();
  }

  private Plan plan() {
    var tops =
        listing.folders().stream()
            .filter(name -> ("/" + name).endsWith("/" + MhlHistory.FOLDER))
            .map(name -> name.substring(0, name.length() - MhlHistory.FOLDER.length()))
            .sorted(Comparator.comparingInt(String::length).thenComparing(name -> name))
            .toList();
    if (tops.size() > MOST_HISTORIES) {
      findings.fault(Text.of("there are more histories than can be looked at"), "");
    }
    tops.stream().limit(MOST_HISTORIES).forEach(this::read);
    if (named.isEmpty()) {
      findings.fault(Text.of("its lists name no file"), MhlHistory.FOLDER);
    }
    listing.files().keySet().stream()
        .filter(name -> !named.contains(name) && !ListPlan.isLitter(name))
        .filter(
            name -> !("/" + name).contains("/" + MhlHistory.FOLDER + "/") && !ignored.matches(name))
        .forEach(findings::unlisted);
    listing.others().values().forEach(one -> findings.warn(one.fault(), one.where()));
    return findings.plan(PackageCheck.Kind.MHL, lists, closed);
  }

  /**
   * Takes up one history.
   *
   * @param top the folder that it is about, with {@code /} at its end; empty for the whole
   */
  private void read(String top) {
    try {
      var history = MhlHistory.read(folder.resolve(top));
      if (history.isEmpty()) {
        return;
      }
      history.get().lists().forEach(list -> lists.add(top + MhlHistory.FOLDER + "/" + list));
      history
          .get()
          .claims()
          .forEach((path, claim) -> want(top + path, claim.size(), claim.hashes()));
      history
          .get()
          .references()
          .forEach((path, c4) -> want(top + path, OptionalLong.empty(), Map.of(HashKind.C4, c4)));
      ignored.add(top, history.get().ignored());
      closed |= top.isEmpty() && history.get().coversAll();
    } catch (IOException e) {
      findings.fault(FileProblems.of(e));
    }
  }

  private void want(String name, OptionalLong size, Map<HashKind, String> hashes) {
    if (++entries >= MOST_ENTRIES) {
      if (entries == MOST_ENTRIES) {
        findings.fault(Text.of("its lists name more files than can be looked at"), "");
      }
      return;
    }
    var there = listing.named(name).or(() -> listing.spelledOtherwise(name));
    if (there.isEmpty()) {
      findings.missing(name);
      Optional.ofNullable(listing.others().get(name)).ifPresent(findings::fault);
      return;
    }
    named.add(there.get().name());
    var sums = new ArrayList<Sum>();
    hashes.forEach((kind, value) -> sums.add(new Sum.Media(kind, value)));
    findings.want(there.get(), size, sums);
  }
}
