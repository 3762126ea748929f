package org.framewright.world;

import java.util.Locale;
import org.framewright.shotlist.SetupState;

/**
 * One thing that happens. Its numbers are taken modulo what there is when it happens, so that a
 * script from which steps were taken out can still be played.
 */
sealed interface Step {
  /** In words, for the story of a failure. */
  String said();

  /**
   * The first step of every script.
   *
   * @param template which convention
   * @param ahead how many seconds body B's clock is ahead
   * @param oneDisk whether both backups are partitions of one disk
   * @param locks whether the volume has locks
   * @param coarse whether the volume keeps times in steps of two seconds
   */
  record Start(int template, int ahead, boolean oneDisk, boolean locks, boolean coarse)
      implements Step {
    @Override
    public String said() {
      return "A job is started with convention %d; body B is %d s ahead%s%s%s"
          .formatted(
              template,
              ahead,
              oneDisk ? "; both backups lie on one disk" : "",
              locks ? "" : "; the volume has no locks",
              coarse ? "; the volume keeps times to 2 s" : "");
    }
  }

  record Pass(int seconds) implements Step {
    @Override
    public String said() {
      return seconds + " s pass";
    }
  }

  record ImportList(Seat seat, int edition) implements Step {
    @Override
    public String said() {
      return seat.said() + " imports edition " + edition + " of the client's list";
    }
  }

  /**
   * A tick.
   *
   * @param view which of the wanted views, or -1 for none
   * @param several how many setups, from this one on
   */
  record Tick(Seat seat, int setup, int several, SetupState state, int view, boolean loosely)
      implements Step {
    @Override
    public String said() {
      return "%s ticks setup #%d%s %s%s"
          .formatted(
              seat.said(),
              setup,
              several > 1 ? " and the " + (several - 1) + " after it" : "",
              state.word(),
              view < 0 ? "" : ", view #" + view);
    }
  }

  record SignOffByNobody(Seat seat, int setup) implements Step {
    @Override
    public String said() {
      return seat.said() + " signs setup #" + setup + " off without a name";
    }
  }

  record TickUnknown(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " ticks a setup that is not in the list";
    }
  }

  record TakeBack(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " takes its last tick back";
    }
  }

  record Comment(Seat seat, int setup) implements Step {
    @Override
    public String said() {
      return seat.said() + " comments on setup #" + setup;
    }
  }

  record PhoneTick(int setup, SetupState state, int clockSeconds) implements Step {
    @Override
    public String said() {
      return "On the phone setup #" + setup + " is ticked " + state.word();
    }
  }

  record PhoneTakeBack(int which) implements Step {
    @Override
    public String said() {
      return "On the phone an earlier tick is taken back";
    }
  }

  record PhoneComment(int setup) implements Step {
    @Override
    public String said() {
      return "On the phone somebody comments on setup #" + setup;
    }
  }

  /** What the network does to what the phone sends. */
  enum Network {
    GOOD,
    REQUEST_LOST,
    REPLY_LOST,
    SENT_TWICE,
    OUT_OF_ORDER
  }

  record PhoneSend(Seat seat, Network network) implements Step {
    @Override
    public String said() {
      return "The phone sends what waits to "
          + seat.station()
          + (network == Network.GOOD
              ? ""
              : "; " + network.name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
  }

  /** Where a camera writes. */
  enum Writes {
    CABLE,
    CARD,
    BOTH
  }

  /**
   * A burst.
   *
   * @param half whether the last file is only half written so far
   */
  record Shoot(int body, int frames, Writes writes, boolean half) implements Step {
    @Override
    public String said() {
      return "Body %s takes %d frames, to %s%s"
          .formatted(
              body == 0 ? "A" : "B",
              frames,
              writes.name().toLowerCase(Locale.ROOT),
              half ? "; the last is half written" : "");
    }
  }

  record Finish() implements Step {
    @Override
    public String said() {
      return "What was half written is written to its end";
    }
  }

  record ResetNumber(int body, int number) implements Step {
    @Override
    public String said() {
      return "Body " + (body == 0 ? "A" : "B") + " counts on from " + number;
    }
  }

  record ClockJump(int body, int seconds) implements Step {
    @Override
    public String said() {
      return "The clock of body " + (body == 0 ? "A" : "B") + " jumps by " + seconds + " s";
    }
  }

  record Look(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " sees what arrived";
    }
  }

  record CardIn(int body) implements Step {
    @Override
    public String said() {
      return "The card of body " + (body == 0 ? "A" : "B") + " is copied among the frames by hand";
    }
  }

  record Move(Seat seat, int frame, int frames, int setup) implements Step {
    @Override
    public String said() {
      return "%s moves %d frames from #%d on to setup #%d"
          .formatted(seat.said(), frames, frame, setup);
    }
  }

  record TakeMoveBack(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " takes its last move of frames back";
    }
  }

  record Choose(Seat seat, int frame, int frames, boolean chosen) implements Step {
    @Override
    public String said() {
      return "%s %s %d frames from #%d on"
          .formatted(seat.said(), chosen ? "chooses" : "leaves out", frames, frame);
    }
  }

  record Rate(Seat seat, int frame, int frames, int rating) implements Step {
    @Override
    public String said() {
      return "%s rates %d frames from #%d on with %d".formatted(seat.said(), frames, frame, rating);
    }
  }

  record Rename(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " renames the frames";
    }
  }

  record Undo(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " takes the last renames back";
    }
  }

  record Redo(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " does the renames again that were taken back";
    }
  }

  record HandOff(Seat seat) implements Step {
    @Override
    public String said() {
      return seat.said() + " hands the chosen frames off";
    }
  }

  /**
   * A card is copied with the program.
   *
   * @param places 1, 2 or 3: to the first backup, the second, or both
   */
  record CopyCard(Seat seat, int body, int places) implements Step {
    @Override
    public String said() {
      return "%s copies the card of body %s to backup %s"
          .formatted(
              seat.said(),
              body == 0 ? "A" : "B",
              places == 3 ? "1 and 2" : places == 2 ? "2" : "1");
    }
  }

  /** A card is asked for, and cleared when that may be. */
  record Ask(Seat seat, int body) implements Step {
    @Override
    public String said() {
      return "%s asks whether the card of body %s may be cleared, and clears it if so"
          .formatted(seat.said(), body == 0 ? "A" : "B");
    }
  }

  /** What happens to a backup behind everybody's back. */
  enum Harm {
    BIT_FLIPPED,
    FILE_GONE,
    FROM_MEMORY,
    CARD_UNREADABLE
  }

  record Damage(Harm harm, int place, int file) implements Step {
    @Override
    public String said() {
      return switch (harm) {
        case BIT_FLIPPED -> "A bit of file #" + file + " on backup " + (place + 1) + " flips";
        case FILE_GONE -> "Somebody deletes file #" + file + " on backup " + (place + 1);
        case FROM_MEMORY ->
            "Backup " + (place + 1) + " is answered from memory from now on, or not";
        case CARD_UNREADABLE -> "File #" + file + " on card " + (place + 1) + " cannot be read";
      };
    }
  }

  record Restart(Seat seat, boolean presentKnown) implements Step {
    @Override
    public String said() {
      return seat.said()
          + " is started again"
          + (presentKnown ? ", and takes what lies there for old" : "");
    }
  }

  record ClockSet(Seat seat, int seconds) implements Step {
    @Override
    public String said() {
      return "The clock of " + seat.station() + " is set to be " + seconds + " s ahead";
    }
  }

  record FolderGone(Seat seat, Step meanwhile) implements Step {
    @Override
    public String said() {
      return "The drive of the job is unplugged; " + meanwhile.said() + "; it is plugged in again";
    }
  }

  record FolderCopied() implements Step {
    @Override
    public String said() {
      return "The job's folder is copied to another disk, and everybody goes on there";
    }
  }

  /**
   * A log is brought to the other folder, up to a part of what came since.
   *
   * @param back from the office to the set
   * @param writer which log
   */
  record Synchronise(boolean back, int writer, int percent) implements Step {
    @Override
    public String said() {
      return "%d %% of log #%d come over to %s"
          .formatted(percent, writer, back ? "the set" : "the office");
    }
  }

  record ConflictCopy(boolean away, int writer) implements Step {
    @Override
    public String said() {
      return "The synchroniser makes a conflict copy of log #"
          + writer
          + (away ? " in the office" : " on set");
    }
  }

  record NewerVersion() implements Step {
    @Override
    public String said() {
      return "A newer version of the program wrote something that this one does not know";
    }
  }

  /** The end of a day: everybody compares, and so does somebody who comes new. */
  record Night() implements Step {
    @Override
    public String said() {
      return "The day ends";
    }
  }

  /**
   * A step that the disk disturbs.
   *
   * @param at at which change
   */
  record Disturbed(Step step, Trouble trouble, int at) implements Step {
    @Override
    public String said() {
      return step.said() + "; at change " + at + " it " + trouble.said();
    }
  }
}
