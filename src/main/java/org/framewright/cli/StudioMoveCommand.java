package org.framewright.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.framewright.base.FileProblems;
import org.framewright.job.JobException;
import org.framewright.job.OtherJob;
import org.framewright.shotlist.Setup;
import org.framewright.studio.MoveDescription;
import org.framewright.studio.Moves;
import org.framewright.studio.OwnSet;
import org.framewright.studio.SetupMove;
import org.framewright.studio.Store;
import org.framewright.studio.StoreException;
import org.framewright.studio.StudioSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Has setups shot by another set. */
@Command(
    name = "move",
    description = {
      "Has setups shot by another set: their lines and comments go there, by the computers of both",
      "sets. What is on set, ticked or has frames stays. Without setups: the moves of the last week."
    },
    addMethodSubcommands = false)
final class StudioMoveCommand implements Callable<Integer> {
  private static final int DAYS = 7;
  private static final long BETWEEN = 500;

  @Mixin private Output output;
  @Mixin private HoursOptions hours;

  @Parameters(
      paramLabel = "SETUP",
      arity = "0..*",
      description = "Setups of the set that has them.")
  private List<String> setups = List.of();

  @Option(
      names = "--from",
      paramLabel = "SET",
      description = "The set that has them: the job's name, as studio shows it.")
  private Optional<String> from = Optional.empty();

  @Option(names = "--to", paramLabel = "SET", description = "The set that is to shoot them.")
  private Optional<String> to = Optional.empty();

  @Option(
      names = "--back",
      description =
          "Take moves from this set back that no computer of the other set has taken yet.")
  private boolean back;

  @Option(names = "--by", paramLabel = "NAME", description = "Who wants it.")
  private String by = "";

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      defaultValue = "10",
      description = "Wait so long for the other computers' answers (${DEFAULT-VALUE}).")
  private long seconds;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure, InterruptedException {
    check();
    var kept = StudioCommand.kept();
    try (var store = Store.open(kept)) {
      var moves = Moves.of(store);
      if (setups.isEmpty()) {
        show(moves.recent(DAYS));
        return ExitStatus.DONE.code();
      }
      var giving = set(store, from.orElseThrow());
      if (back) {
        var taken = new ArrayList<SetupMove>();
        for (var move : open(moves, giving)) {
          taken.add(moves.takeBack(move));
        }
        show(taken);
        return (taken.stream().allMatch(StudioMoveCommand::stays)
                ? ExitStatus.DONE
                : ExitStatus.NEEDS_A_PERSON)
            .code();
      }
      var taking = set(store, to.orElseThrow());
      if (giving.equals(taking)) {
        throw CommandFailure.badInput(
            "--from and --to are the same set", "Give the set that is to shoot them.");
      }
      var asked = new ArrayList<SetupMove>();
      for (var setup : setups) {
        asked.add(moves.ask(giving, taking, setup, by));
      }
      var ended = answered(moves, asked, own(store, kept, giving, taking));
      show(ended);
      return (ended.stream().anyMatch(StudioMoveCommand::stays)
              ? ExitStatus.NEEDS_A_PERSON
              : ExitStatus.DONE)
          .code();
    }
  }

  private void check() throws CommandFailure {
    if (setups.isEmpty() && (from.isPresent() || to.isPresent() || back)) {
      throw CommandFailure.badInput(
          "no setup is named", "Give the setups: framewright studio move 014 --from SET --to SET");
    }
    if (!setups.isEmpty() && (from.isEmpty() || back == to.isPresent())) {
      throw CommandFailure.badInput(
          back ? "--back takes setups back to --from" : "a move needs both sets",
          back
              ? "Give it with --from SET, without --to."
              : "Give them: framewright studio move 014 --from SET --to SET");
    }
    if (seconds < 0) {
      throw CommandFailure.badInput("--for " + seconds, "Give a number of seconds from 0 up.");
    }
  }

  private static OtherJob set(Store store, String name) throws StoreException, CommandFailure {
    var found = store.named(name);
    if (found.isEmpty()) {
      throw CommandFailure.badInput(
          "the store has no job " + name, "See: framewright studio --all");
    }
    if (found.size() > 1) {
      throw CommandFailure.badInput(
          "the store has several jobs " + name,
          "Move setups in the app, on the page All sets, which knows them apart.");
    }
    return new OtherJob(found.getFirst().id(), found.getFirst().name());
  }

  /** The moves that are to be taken back, one of each setup. */
  private List<SetupMove> open(Moves moves, OtherJob giving) throws IOException, CommandFailure {
    var open = new ArrayList<SetupMove>();
    for (var setup : setups) {
      var key = Setup.canonicalKey(setup);
      var found =
          moves.open(giving.id()).stream()
              .filter(move -> Setup.canonicalKey(move.code()).equals(key))
              .toList();
      if (found.isEmpty()) {
        throw CommandFailure.badInput(
            "setup " + setup + " is on its way to no other set",
            "See where it is: framewright studio move");
      }
      open.addAll(found);
    }
    return open;
  }

  /** The sets of this computer that have a part in it. */
  private List<OwnSet> own(Store store, StudioSettings.Kept kept, OtherJob giving, OtherJob taking)
      throws StoreException, CommandFailure {
    var sets = new ArrayList<OwnSet>();
    for (var folder : kept.jobs()) {
      try {
        var set =
            OwnSet.open(store, folder, hours.hours(output), Clock.system(ZoneId.systemDefault()));
        if (set.id().equals(giving.id()) || set.id().equals(taking.id())) {
          sets.add(set);
        }
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

  /** The moves once all are answered, or the time is over. */
  private List<SetupMove> answered(Moves moves, List<SetupMove> asked, List<OwnSet> own)
      throws IOException, InterruptedException {
    long begun = System.nanoTime();
    while (true) {
      follow(own);
      var now = new ArrayList<SetupMove>();
      for (var move : asked) {
        now.add(moves.now(move));
      }
      boolean over = System.nanoTime() - begun >= TimeUnit.SECONDS.toNanos(seconds);
      if (over || now.stream().allMatch(SetupMove::isEnded)) {
        // The set that gave them writes down how it ended.
        follow(own);
        return now;
      }
      TimeUnit.MILLISECONDS.sleep(BETWEEN);
    }
  }

  private void follow(List<OwnSet> sets) throws StoreException {
    for (var set : sets) {
      try {
        set.follow();
      } catch (StoreException e) {
        throw e;
      } catch (IOException e) {
        note(FileProblems.of(e).sentence());
      }
    }
  }

  private static boolean stays(SetupMove move) {
    return move.outcome() instanceof SetupMove.Outcome.Stays;
  }

  private void show(List<SetupMove> moves) {
    if (output.json()) {
      output.write(Map.of("moves", moves.stream().map(StudioMoveCommand::json).toList()));
      return;
    }
    if (moves.isEmpty()) {
      output.out().println("No setup was moved within a week.");
    }
    for (var move : moves) {
      output.out().println(MoveDescription.said(move) + ".");
      MoveDescription.remedy(move).ifPresent(remedy -> output.out().println("  " + remedy));
    }
  }

  private static Map<String, Object> json(SetupMove move) {
    var document = new LinkedHashMap<String, Object>();
    document.put("setup", move.code());
    document.put("from", move.from().name());
    document.put("to", move.to().name());
    document.put("askedBy", move.by().isEmpty() ? null : move.by());
    document.put("askedAt", move.asked().toString());
    document.put("outcome", MoveDescription.word(move));
    if (move.outcome() instanceof SetupMove.Outcome.Arrived(var code, var at)) {
      document.put("code", code);
      document.put("at", at.toString());
    }
    if (move.outcome() instanceof SetupMove.Outcome.Stays(var why, var at)) {
      document.put("why", why.map(known -> known.what().english()).orElse(null));
      document.put("at", at.toString());
    }
    return document;
  }
}
