package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.FileProblems;
import org.framewright.base.NameKey;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.FileRole;
import org.framewright.frames.PictureFile;
import org.framewright.handoff.spec.Specification;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.job.Job;
import org.framewright.naming.Built;
import org.framewright.naming.Reading;

/** Reads the files that came back, one after another, against the selects that were handed off. */
final class ReturnReader {
  private static final Set<String> PAPERS =
      Set.of("index.csv", "readme.txt", "thumbs.db", "desktop.ini");

  private final Job job;
  private final SortedMap<String, ExpectedSelect> expected;
  private final SortedMap<String, ExpectedSelect> slates;
  private final RetouchedNames names;
  private final Map<String, Map<Returns.State, List<String>>> found = new HashMap<>();
  private final Map<String, SortedMap<Integer, List<String>>> versions = new HashMap<>();
  private final List<Returns.Extra> others = new ArrayList<>();

  /** Whole pictures that answer no select, and files beside them; with the reason. */
  private final List<LikelySelects.Stray> strays = new ArrayList<>();

  /** The names without ending of all pictures, with their folders, so that sidecars find theirs. */
  private final Set<String> pictures = new HashSet<>();

  private final List<FolderFiles.Found> sidecars = new ArrayList<>();

  /**
   * @param expected what is to come back
   * @param slates what went along, of which nothing is said where it comes back as it was
   */
  ReturnReader(
      Job job,
      SortedMap<String, ExpectedSelect> expected,
      SortedMap<String, ExpectedSelect> slates) {
    this.job = job;
    this.expected = expected;
    this.slates = slates;
    this.names = new RetouchedNames(job);
  }

  void takeOther(FolderFiles.Other other) {
    others.add(new Returns.Extra(other.name(), other.problem().fault()));
  }

  private static boolean isPaper(String name) {
    var small = name.toLowerCase(Locale.ROOT);
    return PAPERS.contains(small) || ExtraPaper.NAMES.contains(small) || OpenPackage.isPaper(name);
  }

  void take(FolderFiles.Found file) {
    var name = file.path().getFileName().toString();
    if (name.startsWith(".") || isPaper(name)) {
      return;
    }
    if (file.bytes() == 0) {
      others.add(new Returns.Extra(file.name(), Text.of("the file is empty")));
      return;
    }
    var own = expected.get(NameKey.of(stem(name)));
    var slate = slates.get(NameKey.of(stem(name)));
    try {
      if (slate != null && slate.has(file)) {
        return;
      }
      if (own != null && own.has(file)) {
        answer(own, Returns.State.UNTOUCHED, file.name());
        return;
      }
    } catch (IOException e) {
      others.add(new Returns.Extra(file.name(), FileProblems.of(e).fault()));
      return;
    }
    if (FileRole.of(file.path()).filter(role -> role == FileRole.SIDECAR).isPresent()) {
      sidecars.add(file);
      return;
    }
    var fault = PictureFile.fault(file.path());
    if (fault.isPresent()) {
      others.add(
          new Returns.Extra(file.name(), Text.of("it is no whole picture: {0}", fault.get())));
      return;
    }
    pictures.add(NameKey.of(stem(file.name())));
    pictures.add(NameKey.of(file.name()));
    if (own != null) {
      changed(own, file);
    } else {
      read(file, stem(name));
    }
  }

  private static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot > name.lastIndexOf('/') + 1 ? name.substring(0, dot) : name;
  }

  /** A picture with a select's own name and other content. */
  private void changed(ExpectedSelect own, FolderFiles.Found file) {
    answer(own, Returns.State.CHANGED, file.name());
    if (names.exist()) {
      strays.add(
          new LikelySelects.Stray(
              file.name(), Text.of("it has the select's name, without a version")));
    }
  }

  private void read(FolderFiles.Found file, String stem) {
    if (!names.exist()) {
      stray(file, Text.of("this is not the name of a select that was handed off"));
      return;
    }
    switch (job.convention().read(stem, Returns.RETOUCHED)) {
      case Reading.One one -> {
        var values = new LinkedHashMap<>(job.values());
        values.putAll(one.fields());
        var select =
            job.convention().build(HandOff.SELECT, values) instanceof Built.Name built
                ? built.text()
                : "";
        var entry = expected.get(NameKey.of(select));
        if (entry == null) {
          others.add(
              new Returns.Extra(
                  file.name(),
                  Text.of("it would be the retouched {0}, which was not handed off", select)));
        } else {
          answer(entry, Returns.State.ANSWERED, file.name());
          names
              .version(one.fields())
              .ifPresent(
                  version ->
                      versions
                          .computeIfAbsent(entry.select(), _ -> new TreeMap<>())
                          .computeIfAbsent(version, _ -> new ArrayList<>())
                          .add(file.name()));
        }
      }
      case Reading.Several _ -> stray(file, Text.of("its name can be read in several ways"));
      case Reading.None none -> stray(file, none.said());
    }
  }

  private void stray(FolderFiles.Found file, Text why) {
    strays.add(new LikelySelects.Stray(file.name(), why));
  }

  private void answer(ExpectedSelect entry, Returns.State state, String file) {
    found
        .computeIfAbsent(entry.select(), _ -> new TreeMap<>())
        .computeIfAbsent(state, _ -> new ArrayList<>())
        .add(file);
  }

  /**
   * A select's best answer counts: a version, else a change, else its own copy; none where stopped.
   */
  List<Returns.Answer> answers(
      Optional<Specification> specification, Path folder, Progress progress) throws IOException {
    var frames = new SelectFrames(job);
    var asked = specification.map(one -> new ReturnFindings(job, one, folder));
    var all = new ArrayList<Returns.Answer>();
    for (var entry : expected.values()) {
      if (progress.cancelled()) {
        return List.of();
      }
      var answers = found.getOrDefault(entry.select(), Map.of());
      var state =
          answers.keySet().stream().min(Returns.State::compareTo).orElse(Returns.State.MISSING);
      var answer =
          new Returns.Answer(
              entry.select(),
              entry.setup(),
              state,
              answers.getOrDefault(state, List.of()),
              versions.getOrDefault(entry.select(), new TreeMap<>()),
              frames.of(entry),
              List.of());
      all.add(asked.map(one -> answer.with(one.of(answer, entry.original()))).orElse(answer));
    }
    return all;
  }

  /** What answers no select, by name; with the selects that they likely are of. */
  List<Returns.Extra> extras() {
    var extras = new ArrayList<>(others);
    for (var sidecar : sidecars) {
      if (!pictures.contains(NameKey.of(stem(sidecar.name())))) {
        extras.add(new Returns.Extra(sidecar.name(), Text.of("a sidecar without its picture")));
      }
    }
    var beside = sidecars.stream().map(FolderFiles.Found::name).toList();
    extras.addAll(new LikelySelects(expected, names, versions).of(strays, beside));
    extras.sort(Comparator.comparing(Returns.Extra::file));
    return List.copyOf(extras);
  }
}
