package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Finds which requests can be met, in time linear in their number: looks at every folder once and
 * at every file once, and blocks what cannot be done, with all that hangs on it.
 */
final class Planner {
  private final Disk disk;
  private final Path root;
  private final Path top;
  private final boolean takingBack;
  private final Map<Path, Folder> folders = new HashMap<>();
  private final Map<String, Map<String, Draft>> wantedByFolder = new HashMap<>();
  private final ArrayDeque<Draft> blocked = new ArrayDeque<>();

  /** What a caller asks of each file beyond what a plan asks. */
  @FunctionalInterface
  interface Demand {
    /**
     * Why a file must not be renamed; null if it may. Asked on several threads.
     *
     * @param index of the request
     */
    Problem problem(int index, Path file, Seen seen) throws IOException;
  }

  /**
   * A planner for one plan.
   *
   * @param takingBack whether the files had the requested names before: then names that collide
   *     only on other disks are let be, for they stood side by side here
   */
  Planner(Disk disk, Path root, boolean takingBack) {
    this.disk = disk;
    this.root = root;
    this.top = root.getFileSystem().getPath("");
    this.takingBack = takingBack;
  }

  /**
   * A folder as the volume lists it.
   *
   * @param names every name
   * @param leavers who leaves each name, if any
   * @param wanted by {@link Draft#wantedName}, who wants it; shared by folders whose names collide
   */
  private record Folder(
      Path path, Problem problem, Listing names, List<Draft> leavers, Map<String, Draft> wanted) {}

  private final class Draft {
    final RenameRequest request;
    Folder in;
    Folder into;
    Path from;
    Path to;
    int listed = Listing.NONE;
    Seen seen = Seen.NOTHING;
    Status status = Status.READY;
    Text why = Text.NONE;
    Text remedy = Text.NONE;

    /** The requested name, as names are distinguished here. */
    private String wantedName;

    Draft(RenameRequest request) {
      this.request = request;
      this.from = request.from();
      this.to = request.to();
    }

    boolean leaves() {
      return status == Status.READY;
    }

    /** The name that it leaves, as names are distinguished here. */
    String leftName() {
      return distinguished(name(from));
    }

    /** The name that it wants, as names are distinguished here. */
    String wantedName() {
      if (wantedName == null) {
        wantedName = distinguished(name(to));
      }
      return wantedName;
    }

    private String distinguished(Path name) {
      return takingBack ? name.toString() : NameKey.of(name.toString());
    }

    PlannedRename planned() {
      return new PlannedRename(from, to, request.group(), status, why, remedy, seen);
    }
  }

  List<PlannedRename> plan(List<RenameRequest> requests, Demand demand) throws IOException {
    var drafts = new ArrayList<Draft>(requests.size());
    for (var request : requests) {
      var draft = new Draft(request);
      find(draft);
      drafts.add(draft);
    }
    var problems = new Problem[drafts.size()];
    Parallel.each(problems.length, i -> problems[i] = problem(i, drafts.get(i), demand));
    for (int i = 0; i < problems.length; i++) {
      if (problems[i] != null) {
        block(drafts.get(i), problems[i]);
      }
    }
    blockTwoNamesForOneFile(drafts);
    blockOneNameWantedTwice(drafts);
    blockOneFileNamedTwice(drafts);
    blockTakenTargets(drafts);
    spread(drafts);
    return drafts.stream().map(Draft::planned).toList();
  }

  // ---- each request by itself

  private void find(Draft draft) throws IOException {
    draft.from = below(draft.request.from());
    draft.to = below(draft.request.to());
    draft.in = folder(draft.from);
    draft.into = folder(draft.to);
  }

  /** Looks at the file; null if it may have its new name. Looks at no other draft. */
  private Problem problem(int index, Draft draft, Demand demand) throws IOException {
    if (draft.in.problem() != null) {
      return draft.in.problem();
    }
    draft.listed = listed(draft.in, name(draft.from));
    if (draft.listed == Listing.NONE) {
      return noSuchFile(draft);
    }
    if (draft.into.problem() != null) {
      return draft.into.problem();
    }
    var file = draft.in.path().resolve(name(draft.from));
    var look = disk.look(file);
    draft.seen = look.seen();
    if (!look.isFile()) {
      var what =
          switch (look.kind()) {
            case FOLDER -> Text.of("{0} is a folder", draft.from);
            case LINK -> Text.of("{0} is a link", draft.from);
            default -> Text.of("{0} is no plain file", draft.from);
          };
      return new Problem(what, "Only files are renamed.");
    }
    var name = name(draft.to).toString();
    var illegal = LegalName.trouble(name, disk.traits());
    if (illegal.isPresent()) {
      return new Problem(Text.of("{0}: {1}", name, illegal.get()), "Choose another name.");
    }
    if (TempNames.isAny(name)) {
      return new Problem(
          Text.of("{0} is a name that renames in progress use", name), "Choose another name.");
    }
    if (PathBytes.same(draft.from, draft.to) || isOneName(draft)) {
      draft.status = Status.UNCHANGED;
      return null;
    }
    return demand.problem(index, file, draft.seen);
  }

  /**
   * Where a name stands in a folder, also where the volume lists it with its accents written in the
   * other way and finds it all the same, see {@link ListedNames}.
   */
  private int listed(Folder folder, Path name) throws IOException {
    int exactly = folder.names().exactly(name);
    if (exactly != Listing.NONE) {
      return exactly;
    }
    for (int alike = folder.names().alike(name);
        alike != Listing.NONE;
        alike = folder.names().alikeAfter(alike)) {
      if (ListedNames.differInAccentsOnly(name, folder.names().name(alike))) {
        boolean found = disk.look(folder.path().resolve(name)).kind() != Look.Kind.NONE;
        return found ? alike : Listing.NONE;
      }
    }
    return Listing.NONE;
  }

  /** Whether both names differ in accents only and this volume takes them for one. */
  private boolean isOneName(Draft draft) throws IOException {
    return draft.in.path().equals(draft.into.path())
        && ListedNames.differInAccentsOnly(name(draft.from), name(draft.to))
        && listed(draft.in, name(draft.to)) == draft.listed;
  }

  private Problem noSuchFile(Draft draft) {
    int alike = draft.in.names().alike(name(draft.from));
    return alike == Listing.NONE
        ? new Problem(Text.of("there is no file {0}", draft.from), "Check the name, or plan again.")
        : new Problem(
            Text.of(
                "there is no file {0}, but there is {1}", draft.from, draft.in.names().name(alike)),
            "Use the exact name.");
  }

  /** The path relative to the root. */
  private Path below(Path path) {
    var plain = path.normalize();
    return plain.isAbsolute() && plain.startsWith(root) && !plain.equals(root)
        ? root.relativize(plain)
        : plain;
  }

  private static Path name(Path path) {
    var name = path.getFileName();
    return name == null ? path : name;
  }

  private Folder folder(Path file) throws IOException {
    var parent = file.getParent();
    var relative = parent == null ? top : parent;
    var known = folders.get(relative);
    if (known == null) {
      known = opened(file, relative);
      folders.put(relative, known);
    }
    // A name can be bad in a good folder; that is no property of the folder.
    return Folders.isPlainName(name(file))
        ? known
        : closed(
            new Problem(
                Text.of("\"{0}\" is no path of a file", file), "Use paths below the folder."));
  }

  private Folder opened(Path file, Path relative) throws IOException {
    // On Windows \x and D:x have a root, are not absolute, and lead out of the folder.
    if (file.getRoot() != null || relative.getRoot() != null) {
      return closed(
          new Problem(
              Text.of("{0} lies outside {1}", file, root),
              "Use paths below the folder, or another one."));
    }
    if (Folders.isOurs(file)) {
      return closed(
          new Problem(
              Text.of("{0} holds this program's own files", Folders.OURS),
              "Rename files outside it."));
    }
    var trouble = Folders.trouble(disk, root, relative);
    if (trouble.isPresent()) {
      return closed(trouble.get());
    }
    var path = relative.toString().isEmpty() ? root : root.resolve(relative);
    var names = new Listing(disk.names(path));
    var wanted =
        wantedByFolder.computeIfAbsent(NameKey.of(relative.toString()), any -> new HashMap<>());
    return new Folder(path, null, names, Arrays.asList(new Draft[names.size()]), wanted);
  }

  private Folder closed(Problem problem) {
    return new Folder(root, problem, new Listing(List.of()), List.of(), new HashMap<>());
  }

  // ---- the requests against each other

  /** A file for which two names are requested is blocked. */
  private void blockTwoNamesForOneFile(List<Draft> drafts) {
    for (var draft : drafts) {
      if (draft.listed == Listing.NONE) {
        continue;
      }
      var other = draft.in.leavers().get(draft.listed);
      if (other == null) {
        draft.in.leavers().set(draft.listed, draft);
      } else {
        var why = Text.of("{0} would get two names", draft.from);
        block(draft, why, Text.of("Keep one of the two lines."));
        block(other, why, Text.of("Keep one of the two lines."));
      }
    }
  }

  /** Files that would get one name are blocked, all of them. */
  private void blockOneNameWantedTwice(List<Draft> drafts) {
    for (var draft : drafts) {
      var other = draft.into.wanted().putIfAbsent(draft.wantedName(), draft);
      if (other != null) {
        var why = Text.of("{0} and {1} would both become {2}", other.from, draft.from, draft.to);
        block(draft, why, Text.of("Give each file a name of its own."));
        block(other, why, Text.of("Give each file a name of its own."));
      }
    }
  }

  /** Two names of one file could not be distinguished after a crash. */
  private void blockOneFileNamedTwice(List<Draft> drafts) throws IOException {
    var files = HashMap.<String, Draft>newHashMap(drafts.size());
    var unnumbered = new HashMap<Seen, List<Draft>>();
    for (var draft : drafts) {
      if (draft.status != Status.READY) {
        continue;
      }
      var other =
          draft.seen.key().isEmpty()
              ? sameFile(draft, unnumbered)
              : files.putIfAbsent(draft.seen.key(), draft);
      if (other != null && !other.from.equals(draft.from)) {
        var why =
            Text.of("{0} and {1} are two names of one file (hard links)", other.from, draft.from);
        block(draft, why, Text.of("Rename one of them at a time."));
        block(other, why, Text.of("Rename one of them at a time."));
      }
    }
  }

  /**
   * Where files have no numbers, as on Windows: one that was there before and is the same file;
   * only files of one size and time can be.
   */
  private Draft sameFile(Draft draft, Map<Seen, List<Draft>> before) throws IOException {
    if (!disk.traits().mayHaveLinks()) {
      return null;
    }
    var alike = before.computeIfAbsent(draft.seen, _ -> new ArrayList<>(1));
    for (var other : alike) {
      if (disk.areOneFile(listedFile(other), listedFile(draft))) {
        return other;
      }
    }
    alike.add(draft);
    return null;
  }

  private static Path listedFile(Draft draft) {
    return draft.in.path().resolve(draft.in.names().name(draft.listed));
  }

  private void blockTakenTargets(List<Draft> drafts) throws IOException {
    for (var draft : drafts) {
      if (!draft.leaves()) {
        continue;
      }
      var names = draft.into.names();
      for (int alike = names.alike(name(draft.to));
          alike != Listing.NONE;
          alike = names.alikeAfter(alike)) {
        var leaver = draft.into.leavers().get(alike);
        boolean stays = leaver == null || !leaver.leaves();
        if (stays) {
          var holder = draft.to.resolveSibling(names.name(alike));
          if (!(takingBack && areTwoNamesHere(draft, holder))) {
            blockTaken(draft, holder);
            break;
          }
        }
      }
    }
  }

  /** Whether this volume holds the other name and still has none of the requested one. */
  private boolean areTwoNamesHere(Draft draft, Path holder) throws IOException {
    return !holder.equals(draft.to)
        && disk.look(draft.into.path().resolve(name(draft.to))).kind() == Look.Kind.NONE;
  }

  private void blockTaken(Draft draft, Path holder) {
    block(
        draft,
        holder.equals(draft.to)
            ? Text.of("the name {0} is taken", draft.to)
            : Text.of("the name {0} is taken on some disks by {1}", draft.to, holder),
        Text.of("Move or rename {0} first, or choose another name.", holder));
  }

  /** What is blocked blocks the rest of its group, and the file that wanted its name. */
  private void spread(List<Draft> drafts) {
    var groups = new HashMap<String, List<Draft>>();
    for (var draft : drafts) {
      if (!draft.request.group().isEmpty()) {
        groups.computeIfAbsent(draft.request.group(), any -> new ArrayList<>()).add(draft);
      }
    }
    while (!blocked.isEmpty()) {
      var draft = blocked.removeFirst();
      for (var mate : groups.getOrDefault(draft.request.group(), List.of())) {
        if (mate.status == Status.UNCHANGED) {
          continue;
        }
        block(
            mate,
            Text.of(
                "its group is renamed whole or not at all, and {0} cannot be renamed", draft.from),
            Text.of("Fix {0} first.", draft.from));
      }
      // A group is reported once.
      groups.remove(draft.request.group());
      var successor = draft.in.wanted().get(draft.leftName());
      if (successor != null && successor.leaves()) {
        blockTaken(successor, draft.from);
      }
    }
  }

  private void block(Draft draft, Problem problem) {
    block(draft, problem.fault(), problem.fix());
  }

  private void block(Draft draft, Text why, Text remedy) {
    if (draft.status != Status.BLOCKED) {
      draft.status = Status.BLOCKED;
      draft.why = why;
      draft.remedy = remedy;
      blocked.add(draft);
    }
  }
}
