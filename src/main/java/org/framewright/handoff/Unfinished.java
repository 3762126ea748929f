package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.Job;

/**
 * Brings earlier hand-offs of a job, which a kill or a crash interrupted, to an end: a package that
 * took its place is recorded, a draft that did not is removed. To be used by whoever holds the
 * job's hand-offs.
 */
final class Unfinished {
  private final Job job;
  private final FileSystem files;
  private final HandOffRecords records;
  private final List<Problem> remarks = new ArrayList<>();
  private final Leftovers leftovers = new Leftovers();
  private Optional<Path> beside = Optional.empty();

  /** The hand-offs that were given up here; the records that were read do not say so yet. */
  private final Set<Integer> given = new HashSet<>();

  Unfinished(Job job, HandOffRecords records) {
    this.job = job;
    this.files = job.folder().getFileSystem();
    this.records = records;
  }

  /** What the next package can use; whoever asked for all this to be finished closes it. */
  Leftovers leftovers() {
    return leftovers;
  }

  /** What was found and done, for a person. */
  List<Problem> remarks() {
    return remarks;
  }

  /** Brings to an end what the records name, and what lies in the folder of the next package. */
  void finish(Path besideTarget) throws IOException {
    beside = Optional.of(besideTarget);
    var listing = records.read();
    remarks.addAll(listing.damaged().values());
    for (int number : records.halfWritten()) {
      var one = listing.usable().get(number);
      if (one != null) {
        records.update(one);
        remarks.add(
            new Problem(
                Text.of("the record of hand-off {0} had not got its name; it has it now", number),
                records.file(number).toString(),
                ""));
      }
    }
    var byDraft = new HashMap<String, HandOffRecord>();
    for (var one : listing.usable().values()) {
      var draft = one.draft().flatMap(this::path);
      if (draft.isPresent() && draft.get().getFileName() != null) {
        byDraft.put(draft.get().getFileName().toString(), one);
      }
      switch (one.state()) {
        case BEGUN -> finishBegun(one, draft);
        case PLACING -> finishPlacing(one, draft);
        case ABANDONED -> {
          if (draft.isPresent() && isThere(draft.get())) {
            clear(one, draft.get());
          }
        }
        case DELIVERED -> {}
      }
    }
    lookBeside(besideTarget, byDraft);
  }

  private void finishBegun(HandOffRecord one, Optional<Path> draft) throws IOException {
    if (draft.isEmpty()) {
      records.update(one.abandoned());
      return;
    }
    var cleared = clear(one, draft.get());
    if (cleared == Draft.Cleared.ABSENT && !isThere(draft.get().getParent())) {
      remarks.add(
          new Problem(
              Text.of(
                  "hand-off {0} was interrupted; its unfinished package may be on a drive that is"
                      + " not connected",
                  one.number()),
              draft.get().toString(),
              "Connect the drive; the next hand-off then removes it."));
    }
  }

  private void finishPlacing(HandOffRecord one, Optional<Path> draft) throws IOException {
    var folder = path(one.folder());
    boolean placed =
        folder.isPresent() && one.digest().isPresent() && isAt(folder.get(), one.digest().get());
    if (placed) {
      if (draft.isPresent()) {
        clearRest(one, draft.get());
      }
      records.update(one.delivered());
      remarks.add(
          new Problem(
              Text.of(
                  "hand-off {0} was interrupted when its package was in its place; it is recorded"
                      + " now",
                  one.number()),
              one.folder(),
              ""));
      return;
    }
    if (draft.isPresent() && Draft.holdsPackage(draft.get())) {
      remove(one, draft.get());
      return;
    }
    if (draft.isPresent()) {
      clearRest(one, draft.get());
    }
    remarks.add(
        new Problem(
            Text.of(
                "hand-off {0} was interrupted when its package took its place, and it is not there"
                    + " now",
                one.number()),
            one.folder(),
            Text.of(
                "If it was on a drive, connect it and hand off again; if there is no such package,"
                    + " delete {0}.",
                records.file(one.number()))));
  }

  /** A package that did not take its place: it is given up before it is torn apart. */
  private void remove(HandOffRecord one, Path draft) throws IOException {
    giveUp(one);
    clear(one, draft);
  }

  private void clearRest(HandOffRecord one, Path draft) {
    try {
      Draft.clear(draft, note(one, draft));
    } catch (IOException e) {
      remarks.add(left(draft, FileProblems.of(e).fault()));
    }
  }

  private static boolean isAt(Path folder, String digest) {
    try {
      return Bag.isAt(folder, digest);
    } catch (IOException e) {
      return false;
    }
  }

  /** Keeps a draft of ours for the package that is made beside it; it is given up before. */
  private boolean isKept(HandOffRecord one, Path draft) throws IOException {
    if (!beside.equals(Optional.ofNullable(draft.getParent()))) {
      return false;
    }
    var taken = Draft.takeOver(draft, note(one, draft));
    if (taken.isEmpty()) {
      return false;
    }
    leftovers.add(taken.get());
    giveUp(one);
    remarks.add(
        new Problem(
            Text.of(
                "hand-off {0} was interrupted; what it had copied is used where it is whole",
                one.number()),
            draft.toString(),
            ""));
    return true;
  }

  /** Removes a draft of ours, or keeps it for the next package, and then gives its hand-off up. */
  private Draft.Cleared clear(HandOffRecord one, Path draft) throws IOException {
    if (isKept(one, draft)) {
      return Draft.Cleared.REMOVED;
    }
    Draft.Cleared cleared;
    try {
      cleared = Draft.clear(draft, note(one, draft));
    } catch (IOException e) {
      remarks.add(left(draft, FileProblems.of(e).fault()));
      return Draft.Cleared.NOT_OURS;
    }
    switch (cleared) {
      case REMOVED -> {
        giveUp(one);
        remarks.add(
            new Problem(
                Text.of(
                    "hand-off {0} was interrupted; its unfinished package is removed",
                    one.number()),
                draft.toString(),
                ""));
      }
      case ABSENT -> {
        if (isThere(draft.getParent())) {
          giveUp(one);
        }
      }
      case IN_USE -> remarks.add(left(draft, Text.of("somebody is writing it")));
      case NOT_OURS -> remarks.add(left(draft, Text.of("it is not certain that nobody needs it")));
    }
    return cleared;
  }

  private void giveUp(HandOffRecord one) throws IOException {
    if (given.add(one.number()) && one.state() != HandOffRecord.State.ABANDONED) {
      records.update(one.abandoned());
    }
  }

  /** Drafts in the folder of the next package: its drive may have had another path before. */
  private void lookBeside(Path folder, Map<String, HandOffRecord> byDraft) throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    for (var draft : drafts(folder)) {
      var own = byDraft.get(draft.getFileName().toString());
      if (own != null && own.state() != HandOffRecord.State.DELIVERED) {
        if (remarks.stream().noneMatch(remark -> remark.where().equals(draft.toString()))) {
          if (own.state() != HandOffRecord.State.PLACING) {
            clear(own, draft);
          } else if (Draft.holdsPackage(draft)) {
            remove(own, draft);
          } else {
            clearRest(own, draft);
          }
        }
      } else if (Files.isDirectory(draft, LinkOption.NOFOLLOW_LINKS) && !Draft.isInUse(draft)) {
        remarks.add(left(draft, Text.of("it is not this job's")));
      }
    }
  }

  private static List<Path> drafts(Path folder) {
    var drafts = new ArrayList<Path>();
    try (var names =
        Files.newDirectoryStream(folder, path -> Draft.isName(path.getFileName().toString()))) {
      names.forEach(drafts::add);
    } catch (IOException | DirectoryIteratorException e) {
      return List.of(); // A folder that can be written to and not looked into.
    }
    return List.copyOf(drafts);
  }

  private static Problem left(Path draft, Text why) {
    return new Problem(
        Text.of("an unfinished package was left as it is: {0}", why),
        draft.toString(),
        "If nobody is handing off to this place, delete it.");
  }

  private String note(HandOffRecord one, Path draft) {
    return Draft.note(job.name(), one.number(), draft);
  }

  private static boolean isThere(Path folder) {
    return folder != null && Files.isDirectory(folder);
  }

  /** A path that the record names; it may be of another system. */
  private Optional<Path> path(String text) {
    try {
      return Optional.of(files.getPath(text)).filter(Path::isAbsolute);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
