package org.framewright.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Callable;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.job.JobException;
import org.framewright.job.SettingsFolder;
import org.framewright.share.LiveSets;
import org.framewright.share.Role;
import org.framewright.share.ShareOptions;
import org.framewright.share.ShareServer;
import org.framewright.studio.Overview;
import org.framewright.studio.OverviewDescription;
import org.framewright.studio.OwnSet;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;
import org.framewright.studio.Store;
import org.framewright.studio.StoreAddress;
import org.framewright.studio.StoreException;
import org.framewright.studio.StoreHints;
import org.framewright.studio.StudioSettings;
import org.framewright.studio.Trial;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Many sets on one store. */
@Command(
    name = "studio",
    description = {
      "All sets of the studio, those that need a person first. Before, the jobs of this computer",
      "that were added are exchanged with the store, a PostgreSQL server. A job folder is whole",
      "without it; what was done while it was not reached follows."
    },
    addMethodSubcommands = false,
    subcommands = {
      StudioAddCommand.class,
      StudioBringCommand.class,
      StudioMoveCommand.class,
      StudioSearchCommand.class,
      StudioNumbersCommand.class
    })
final class StudioCommand implements Callable<Integer> {
  /** How often the store is asked, whether it says that something came or not. */
  private static final Duration ASK = Duration.ofSeconds(5);

  /** Nobody reads all sets anew more often. */
  private static final Duration SHOW = Duration.ofSeconds(2);

  /** From one tick of invented sets to the next. */
  private static final Duration TICK = Duration.ofSeconds(1);

  private static final Duration OF_ALL_TIMES = Duration.ofDays(36_500);

  @Mixin private Output output;
  @Mixin private HoursOptions hours;
  @Mixin private NetworkOptions network;
  @ParentCommand private Framewright program;

  @Option(
      names = "--store",
      paramLabel = "URL",
      description = {
        "Go by this store from now on: postgresql://USER@HOST/DATABASE?sslmode=verify-full. The",
        "password is asked for, or taken from the variable FRAMEWRIGHT_STORE_PASSWORD, and kept in",
        "your settings only."
      })
  private Optional<String> url = Optional.empty();

  @Option(
      names = "--prepare",
      description = {
        "Make the tables of the database that --store names, or bring them up to date; for the",
        "owner of the database. Nothing is kept in your settings."
      })
  private boolean prepare;

  @Option(names = "--all", description = "Also the sets in which nothing was done for a week.")
  private boolean all;

  @Option(
      names = "--follow",
      description = "Go on exchanging this computer's jobs, until Ctrl-C, and show each change.")
  private boolean follow;

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      description = "With --follow, --serve or --try: go on for that long.")
  private Optional<Long> seconds = Optional.empty();

  @Option(
      names = "--serve",
      description = {
        "Follow, and give all sets as a page to browsers on the studio's network, until Ctrl-C or",
        "the end of the input. Each device is paired by a code of its own. A line producer or",
        "viewer makes another code; devices lists who is there; unpair NAME sends one away."
      })
  private boolean serve;

  @Option(
      names = "--try",
      description = {
        "Look at it without a server: starts an installed PostgreSQL on a database of its own, with",
        "ten invented sets, plays ticks on them and shows each change, until Ctrl-C or the end of",
        "the input. Then all of it is removed. Your settings are not touched."
      })
  private boolean trial;

  static StudioSettings settings() {
    return new StudioSettings(SettingsFolder.usual());
  }

  /** The store that this computer goes by. */
  static StudioSettings.Kept kept() throws IOException, CommandFailure {
    return settings()
        .read()
        .orElseThrow(
            () ->
                CommandFailure.badInput(
                    "this computer goes by no store yet",
                    "Give it one: framewright studio --store postgresql://USER@HOST/DATABASE"));
  }

  @Override
  public Integer call() throws IOException, JobException, CommandFailure, InterruptedException {
    if (trial && (url.isPresent() || prepare || all || follow || serve || network.given())) {
      throw CommandFailure.badInput(
          "--try has a store and sets of its own", "Give it alone, or with --for SECONDS.");
    }
    if (url.isPresent()) {
      goBy(StoreAddress.parse(url.get()));
      return ExitStatus.DONE.code();
    }
    if (prepare) {
      throw CommandFailure.badInput(
          "--prepare needs the store", "Give its address too, with --store URL.");
    }
    if (seconds.filter(given -> given < 0).isPresent()) {
      throw CommandFailure.badInput(
          "--for " + seconds.get(), "Give a number of seconds from 0 up.");
    }
    if (network.given() && !serve) {
      throw CommandFailure.badInput(
          "--port, --host and --tls are for the page", "Give --serve too.");
    }
    if (trial) {
      tryOut();
      return ExitStatus.DONE.code();
    }
    var options = serve ? Optional.of(network.options()) : Optional.<ShareOptions>empty();
    var kept = kept();
    try (var store = Store.open(kept);
        var interruption = new Interruption()) {
      var sets = sets(store, kept);
      for (var set : sets) {
        exchange(set);
      }
      var overview = overview(store);
      if (options.isPresent()) {
        serve(kept.store(), store, sets, overview, options.get(), interruption);
        return ExitStatus.DONE.code();
      }
      show(overview);
      if (follow) {
        follow(store, sets, new Lines(overview), interruption);
      }
      return (overview.sets().stream().anyMatch(row -> row.need() == SetRow.Need.URGENT)
              ? ExitStatus.NEEDS_A_PERSON
              : ExitStatus.DONE)
          .code();
    }
  }

  private void goBy(StoreAddress address) throws IOException, CommandFailure {
    var password = StorePassword.of(System.getenv(), address);
    if (prepare) {
      int steps = Store.prepare(address, password);
      say(steps == 0 ? "The store is up to date." : "The store is prepared.");
      return;
    }
    Store.open(address, password).close();
    settings().keep(address, password);
    say("This computer goes by the store " + address + " now.");
  }

  private void say(String line) {
    if (output.json()) {
      output.write(Map.of("said", line));
    } else {
      output.out().println(line);
    }
  }

  /** The jobs of this computer that can be opened; of the others it is told why not. */
  private List<OwnSet> sets(Store store, StudioSettings.Kept kept)
      throws StoreException, CommandFailure {
    var sets = new ArrayList<OwnSet>();
    for (var folder : kept.jobs()) {
      try {
        sets.add(
            OwnSet.open(store, folder, hours.hours(output), Clock.system(ZoneId.systemDefault())));
      } catch (StoreException e) {
        throw e;
      } catch (JobException e) {
        note(e.problem().sentence());
      } catch (IOException e) {
        note(FileProblems.of(e).sentence());
      }
    }
    return sets;
  }

  private void note(String line) {
    output.err().println("Note: " + line);
  }

  private void exchange(OwnSet set) throws StoreException {
    try {
      set.follow();
    } catch (StoreException e) {
      throw e;
    } catch (IOException e) {
      note(FileProblems.of(e).sentence());
    }
  }

  private Overview overview(Store store) throws IOException {
    return Overview.of(store, all ? OF_ALL_TIMES : Overview.RECENT);
  }

  private void show(Overview overview) {
    if (output.json()) {
      var sets = overview.sets().stream().map(StudioCommand::json).toList();
      if (follow || trial) {
        output.writeLine(Map.of("sets", sets));
      } else {
        output.write(Map.of("sets", sets));
      }
    } else {
      lines(overview).forEach(output.out()::println);
      output.out().flush();
    }
  }

  private void tryOut() throws IOException, JobException, InterruptedException {
    var typed = TypedLines.of(program.input());
    try (var interruption = new Interruption();
        var begun = Trial.begin(Clock.system(ZoneId.systemDefault()))) {
      output.err().println("Ten invented sets, in " + begun.folder() + ", on " + begun.server());
      output.err().println("Until Ctrl-C or the end of the input; then all of it is removed.");
      output.err().flush();
      var overview = begun.overview();
      show(overview);
      var lines = new Lines(overview);
      long since = System.nanoTime();
      while (!interruption.cancelled() && seconds.filter(most -> isOver(since, most)).isEmpty()) {
        var line = typed.poll(TICK.toMillis(), TimeUnit.MILLISECONDS);
        if (line != null && line.isEmpty() && seconds.isEmpty()) {
          return;
        }
        begun.play();
        lines.show(begun.overview());
      }
    }
  }

  private void serve(
      StoreAddress address,
      Store store,
      List<OwnSet> sets,
      Overview first,
      ShareOptions options,
      Interruption interruption)
      throws IOException, InterruptedException {
    var name = address.toString();
    var live = new LiveSets(name, first);
    try (var server = ShareServer.start(live, options)) {
      var talk = ServeTalk.ofAllSets(output, server, name, ZoneId.systemDefault());
      talk.begin(List.of(Role.ASSISTANT));
      var _ = server.listen(talk::devicesChanged);
      talk.devicesChanged(); // Who was paired between the two.
      var page = new Page(live, talk, TypedLines.of(program.input()), seconds.isPresent());
      follow(store, sets, page, interruption);
      talk.end();
    }
  }

  /** Who is shown all sets while they are followed. */
  private interface Watcher {
    void show(Overview overview);

    void lost(StoreException why);

    void reached();

    /** Whether there is nobody to show them to any more. */
    boolean isOver();
  }

  /** Whoever reads the terminal. */
  private final class Lines implements Watcher {
    private List<String> shown;

    Lines(Overview first) {
      shown = lines(first);
    }

    @Override
    public void show(Overview overview) {
      if (!lines(overview).equals(shown)) {
        StudioCommand.this.show(overview);
        shown = lines(overview);
      }
    }

    @Override
    public void lost(StoreException why) {
      note(why.problem().sentence() + "; it is tried again");
    }

    @Override
    public void reached() {
      note("the store is reached again");
    }

    @Override
    public boolean isOver() {
      return false;
    }
  }

  /**
   * Whoever has the page.
   *
   * @param isTimed whether it goes on when the input has ended
   */
  private record Page(
      LiveSets live, ServeTalk talk, BlockingQueue<Optional<String>> typed, boolean isTimed)
      implements Watcher {
    @Override
    public void show(Overview overview) {
      live.show(overview);
    }

    @Override
    public void lost(StoreException why) {
      live.lost(Instant.now());
    }

    @Override
    public void reached() {}

    @Override
    public boolean isOver() {
      for (var line = typed.poll(); line != null; line = typed.poll()) {
        if (line.isEmpty()) {
          return !isTimed;
        }
        talk.typed(line.get());
      }
      return false;
    }
  }

  /** That the server says that something came only makes the next look come at once. */
  private void follow(Store store, List<OwnSet> sets, Watcher watcher, Interruption interruption)
      throws InterruptedException, IOException {
    var hints = new LinkedBlockingQueue<String>();
    long begun = System.nanoTime();
    long asked = begun;
    long read = begun;
    boolean reached = true;
    boolean news = false;
    try (var _ = StoreHints.listen(store, hints::offer)) {
      while (!interruption.cancelled()
          && !watcher.isOver()
          && seconds.filter(most -> isOver(begun, most)).isEmpty()) {
        var hinted = hinted(hints);
        long now = System.nanoTime();
        boolean due = now - asked >= ASK.toNanos();
        news |= !hinted.isEmpty();
        try {
          for (var set : sets) {
            if (due || hinted.contains(set.id().toString())) {
              exchange(set);
            }
          }
          if (due || (news && now - read >= SHOW.toNanos())) {
            watcher.show(overview(store));
            read = now;
            news = false;
            if (!reached) {
              watcher.reached();
            }
            reached = true;
          }
        } catch (StoreException e) {
          if (reached) {
            watcher.lost(e);
          }
          reached = false;
        }
        asked = due ? now : asked;
      }
    }
  }

  private static List<String> lines(Overview overview) {
    return OverviewDescription.lines(overview, ZoneId.systemDefault());
  }

  /** The jobs of which the server said something; waits a moment where it said nothing. */
  private static Set<String> hinted(LinkedBlockingQueue<String> hints) throws InterruptedException {
    var hinted = new HashSet<String>();
    var first = hints.poll(100, TimeUnit.MILLISECONDS);
    if (first != null) {
      hinted.add(first);
      hints.drainTo(hinted);
    }
    return hinted;
  }

  private static boolean isOver(long begun, long seconds) {
    return System.nanoTime() - begun >= TimeUnit.SECONDS.toNanos(seconds);
  }

  private static Map<String, Object> json(SetRow row) {
    var document = new LinkedHashMap<String, Object>();
    document.put("job", row.name());
    document.put("needs", row.need().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    row.now().ifPresent(set -> put(set, document));
    document.put("toldBy", row.toldBy().orElse(null));
    document.put("toldAt", row.toldAt().map(Object::toString).orElse(null));
    document.put("eventsSince", row.behind());
    return document;
  }

  private static void put(SetNow set, Map<String, Object> document) {
    document.put(
        "onSet",
        set.onSet()
            .map(
                on ->
                    Map.of(
                        "setup", on.setup(), "title", on.title(), "since", on.since().toString()))
            .orElse(null));
    document.put("planned", set.planned());
    document.put("done", set.done());
    document.put("signedOff", set.signedOff());
    document.put("pickups", set.pickups());
    document.put("waitingForSignOff", set.waiting());
    document.put("waitingSince", set.waitingSince().map(Object::toString).orElse(null));
    document.put("frames", set.frames());
    document.put("paceMinutes", set.pace().map(DayCommand::minutes).orElse(null));
    document.put("finish", set.finish().map(Object::toString).orElse(null));
    document.put("earliest", set.earliest().map(Object::toString).orElse(null));
    document.put("latest", set.latest().map(Object::toString).orElse(null));
    document.put("late", set.late());
    document.put("urgent", set.urgent().stream().map(Text::english).toList());
    document.put("troubles", set.troubles().stream().map(Text::english).toList());
  }
}
