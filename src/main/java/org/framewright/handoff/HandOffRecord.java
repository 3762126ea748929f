package org.framewright.handoff;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What the job remembers of a hand-off, so that what comes back can be read against it, and so that
 * one that was interrupted can be brought to an end.
 *
 * @param number its running number in the job, from 1
 * @param at when it began, ISO 8601
 * @param folder the package's folder, as the system of that day wrote it
 * @param draft the folder in which the package is made; empty once the package is in its place
 * @param digest the SHA-256 of the package's tag manifest, which covers all else in it; empty until
 *     the package is whole
 * @param chosenBy how the selects were chosen
 * @param metadata what the package says of its selects and where, as {@link JobData#mark} has it
 * @param to whom it is for
 */
record HandOffRecord(
    int number,
    State state,
    String at,
    String folder,
    Optional<String> draft,
    Optional<String> digest,
    String chosenBy,
    List<Entry> selects,
    Optional<String> metadata,
    To to) {
  HandOffRecord {
    selects = List.copyOf(selects);
  }

  /** Whom a package is for. */
  enum To {
    RETOUCHER,
    CLIENT
  }

  /** One that says nothing of its selects. */
  HandOffRecord(
      int number,
      State state,
      String at,
      String folder,
      Optional<String> draft,
      Optional<String> digest,
      String chosenBy,
      List<Entry> selects) {
    this(
        number,
        state,
        at,
        folder,
        draft,
        digest,
        chosenBy,
        selects,
        Optional.empty(),
        To.RETOUCHER);
  }

  /** How far a hand-off is. */
  enum State {
    /** Its package is being written. */
    BEGUN,
    /** Its package is whole and about to take its place, or has just taken it. */
    PLACING,
    /** Its package is in its place. */
    DELIVERED,
    /** It was interrupted and its package removed; its number is not used again. */
    ABANDONED;

    /** Whether there may be a package, so that something may come back. */
    boolean mayBeOut() {
      return this == PLACING || this == DELIVERED;
    }
  }

  /**
   * One select.
   *
   * @param files copies of the frame's files
   * @param added files that the frame does not have
   * @param slate whether it is a slate, which need not come back
   */
  record Entry(
      String select,
      String setup,
      String original,
      List<Copy> files,
      List<Copy> added,
      boolean slate) {
    Entry {
      files = List.copyOf(files);
      added = List.copyOf(added);
    }

    /** One of the frame's files only. */
    Entry(String select, String setup, String original, List<Copy> files) {
      this(select, setup, original, files, List.of());
    }

    /** One that is no slate. */
    Entry(String select, String setup, String original, List<Copy> files, List<Copy> added) {
      this(select, setup, original, files, added, false);
    }

    /** All its files in the package. */
    Stream<Copy> all() {
      return Stream.concat(files.stream(), added.stream());
    }
  }

  /**
   * One file of a select.
   *
   * @param name its name in the package
   * @param bytes its size; empty where an older record does not say it
   * @param original the checksum of the frame's file, where the copy says more than that
   */
  record Copy(String name, String sha256, OptionalLong bytes, Optional<String> original) {
    Copy(String name, String sha256, OptionalLong bytes) {
      this(name, sha256, bytes, Optional.empty());
    }

    /** The checksum of the frame's file. */
    String source() {
      return original.orElse(sha256);
    }
  }

  static HandOffRecord begun(int number, String at, String folder, String draft, String chosenBy) {
    return new HandOffRecord(
        number, State.BEGUN, at, folder, Optional.of(draft), Optional.empty(), chosenBy, List.of());
  }

  /** The same hand-off for somebody. */
  HandOffRecord addressed(To whom) {
    return new HandOffRecord(
        number, state, at, folder, draft, digest, chosenBy, selects, metadata, whom);
  }

  /** Whether something may come back of it: its package may be out, with a retoucher. */
  boolean mayComeBack() {
    return to == To.RETOUCHER && state.mayBeOut();
  }

  /** The same hand-off, which says something of its selects. */
  HandOffRecord saying(Optional<String> what) {
    return new HandOffRecord(number, state, at, folder, draft, digest, chosenBy, selects, what, to);
  }

  /** The same hand-off with its whole package. */
  HandOffRecord placing(String packageDigest, List<Entry> packed) {
    return new HandOffRecord(
        number,
        State.PLACING,
        at,
        folder,
        draft,
        Optional.of(packageDigest),
        chosenBy,
        packed,
        metadata,
        to);
  }

  HandOffRecord delivered() {
    return new HandOffRecord(
        number,
        State.DELIVERED,
        at,
        folder,
        Optional.empty(),
        digest,
        chosenBy,
        selects,
        metadata,
        to);
  }

  HandOffRecord abandoned() {
    return new HandOffRecord(
        number,
        State.ABANDONED,
        at,
        folder,
        draft,
        Optional.empty(),
        chosenBy,
        List.of(),
        Optional.empty(),
        to);
  }

  /** Whether it handed off the same files of the same frames under the same names. */
  boolean isOf(HandOffPlan plan) {
    var planned = new TreeMap<String, List<String>>();
    plan.selects()
        .forEach(select -> planned.put(select.name() + "\n" + select.original(), select.files()));
    var recorded = new TreeMap<String, List<String>>();
    selects.forEach(
        entry ->
            recorded.put(
                entry.select() + "\n" + entry.original(),
                entry.files().stream().map(Copy::name).toList()));
    return planned.equals(recorded);
  }

  long bytes() {
    return selects.stream().flatMap(Entry::all).mapToLong(copy -> copy.bytes().orElse(0)).sum();
  }

  /** How many of them are slates. */
  int slates() {
    return (int) selects.stream().filter(Entry::slate).count();
  }

  int files() {
    return selects.stream().mapToInt(entry -> entry.files().size()).sum();
  }
}
