package org.framewright.world;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.job.JobException;

/** A job that is worked on by a script, and compared with the model after each step. */
final class World implements AutoCloseable {
  private final Stage stage;
  private final ListSteps list;
  private final PhoneSteps phone;
  private final FrameSteps frames;
  private final RenameSteps names;
  private final HandOffSteps packages;
  private final CardSteps cards;
  private final FolderSteps folders;

  World(Path scratch, Counts counts) throws IOException {
    stage = new Stage(scratch, counts);
    list = new ListSteps(stage);
    phone = new PhoneSteps(stage);
    frames = new FrameSteps(stage);
    names = new RenameSteps(stage);
    packages = new HandOffSteps(stage);
    cards = new CardSteps(stage);
    folders = new FolderSteps(stage);
  }

  @Override
  public void close() throws IOException {
    Contents.delete(stage.scratch);
  }

  /** Does one step, and compares. */
  void play(Step step) throws IOException, JobException {
    stage.now = stage.now.plusMillis(211);
    stage.counts.step(step);
    take(step);
  }

  private Desk desk(Seat seat) {
    return stage.desks.get(seat);
  }

  private void take(Step step) throws IOException, JobException {
    switch (step) {
      case Step.Start begin -> list.start(begin);
      case Step.Pass(var seconds) -> stage.now = stage.now.plusSeconds(seconds);
      case Step.Disturbed(var inner, var what, var change) -> {
        stage.trouble = what;
        stage.at = change;
        try {
          take(inner);
        } finally {
          stage.trouble = null;
        }
      }
      case Step.FolderGone(_, var meanwhile) -> folders.folderGone(() -> take(meanwhile));
      case Step.ImportList(var seat, var edition) -> list.importList(desk(seat), edition);
      case Step.Tick tick -> list.tick(tick);
      case Step.SignOffByNobody(var seat, var setup) -> list.signOffByNobody(desk(seat), setup);
      case Step.TickUnknown(var seat) -> list.tickUnknown(desk(seat));
      case Step.TakeBack(var seat) -> list.takeBack(desk(seat), Said.Ticked.class);
      case Step.TakeMoveBack(var seat) -> list.takeBack(desk(seat), Said.Moved.class);
      case Step.Comment(var seat, var setup) -> list.comment(desk(seat), setup);
      case Step.PhoneTick(var setup, var state, var clock) -> phone.phoneTick(setup, state, clock);
      case Step.PhoneComment(var setup) -> phone.phoneComment(setup);
      case Step.PhoneTakeBack(var which) -> phone.phoneTakeBack(which);
      case Step.PhoneSend(var seat, var network) -> phone.phoneSend(desk(seat), network);
      case Step.Shoot shoot -> frames.shoot(shoot);
      case Step.Finish _ -> frames.finish();
      case Step.ResetNumber(var body, var number) -> stage.bodies[body].countFrom(number);
      case Step.ClockJump(var body, var seconds) -> stage.bodies[body].jump(seconds);
      case Step.Look(var seat) -> frames.look(desk(seat));
      case Step.CardIn(var body) -> frames.cardIn(body);
      case Step.Move move -> frames.move(move);
      case Step.Choose choose -> frames.choose(choose);
      case Step.Rate rate -> frames.rate(rate);
      case Step.Rename(var seat) -> names.rename(desk(seat), RenameSteps.Renaming.FORWARD);
      case Step.Undo(var seat) -> names.rename(desk(seat), RenameSteps.Renaming.UNDO);
      case Step.Redo(var seat) -> names.rename(desk(seat), RenameSteps.Renaming.REDO);
      case Step.HandOff(var seat) -> packages.handOff(desk(seat));
      case Step.CopyCard copy -> cards.copyCard(copy);
      case Step.Ask(var seat, var body) -> cards.ask(desk(seat), body);
      case Step.Damage damage -> cards.damage(damage);
      case Step.Restart(var seat, var present) -> list.restart(desk(seat), present);
      case Step.ClockSet(var seat, var seconds) -> desk(seat).clock.setAhead(seconds);
      case Step.FolderCopied _ -> folders.folderCopied();
      case Step.Synchronise sync -> folders.synchronise(sync);
      case Step.ConflictCopy(var away, var writer) -> folders.conflictCopy(away, writer);
      case Step.NewerVersion _ -> folders.newerVersion();
      case Step.Night _ -> {
        folders.night();
        packages.night();
      }
    }
  }
}
