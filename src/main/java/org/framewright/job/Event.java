package org.framewright.job;

import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.UUID;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/** Something that happened to a job. What is written is never changed; the state is their fold. */
sealed interface Event {

  /** The job began, with these values of its convention's fields. */
  record Began(SequencedMap<String, String> values) implements Event {}

  /** The job got a key for its slates, since the first ones are printed. */
  record SlatesKeyed(JobKey key) implements Event {}

  /**
   * The shot list was changed. Two stations that change different setups at the same time both
   * prevail, since each says only what it changed.
   *
   * @param put setups that are new or changed
   * @param removed codes of setups that are gone; those that were worked on stay nevertheless
   * @param order every code in its new order
   */
  record ListChanged(List<Setup> put, List<String> removed, List<String> order) implements Event {}

  /**
   * A setup was ticked.
   *
   * @param slate the frame whose slate put it on set, where no person did
   */
  record Marked(String setup, SetupState state, MarkDetails details, Optional<FrameId> slate)
      implements Event {
    /** As people tick. */
    Marked(String setup, SetupState state, MarkDetails details) {
      this(setup, state, details, Optional.empty());
    }
  }

  /** An earlier event was taken back: the state is as if it had never been. */
  record TakenBack(Stamp event) implements Event {}

  /** Frames were seen to arrive. */
  record Arrived(List<FrameId> frames) implements Event {}

  /** The pictures of frames were searched for slates. */
  record LookedAt(List<FrameLook> frames) implements Event {}

  /**
   * A person said something of a slate.
   *
   * @param frames the frame that shows it, by each identity that it is known by
   */
  record SlateSaid(List<FrameId> frames, SlateWord word, String by) implements Event {}

  /**
   * A person said something of a setup, or of a frame of it.
   *
   * @param frames the frame, by each identity that it is known by; empty where it is of the setup
   */
  record Commented(String setup, List<FrameId> frames, String text, String by) implements Event {}

  /** A person moved frames to a setup. */
  record Moved(List<FrameId> frames, String setup, Optional<String> view, String by)
      implements Event {}

  /** A person chose frames for retouching, or chose them no longer. */
  record Selected(List<FrameId> frames, boolean selected, String by) implements Event {}

  /**
   * A person rated frames.
   *
   * @param rating from 0, not rated, to {@link JobState#MOST_RATED}
   */
  record Rated(List<FrameId> frames, int rating, String by) implements Event {}

  /**
   * A person said how lists with these headings are to be read.
   *
   * @param headings the line of headings as written
   * @param options what was said
   * @param list the file's name that it was said of; empty where an older version wrote it
   */
  record ListRead(List<String> headings, ListOptions options, String list) implements Event {}

  /**
   * What people call the computer that wrote it.
   *
   * @param name one line; empty where it is no longer called anything
   */
  record Named(String name) implements Event {}

  /**
   * A setup was given to another job, which takes it or not. It is shot by neither until then.
   *
   * @param by who asked for it; may be empty
   */
  record Given(UUID move, MovedSetup what, OtherJob to, String by) implements Event {}

  /**
   * What became of a setup that was given away.
   *
   * @param arrived whether the other job took it; it stays here if not
   */
  record GiveEnded(UUID move, boolean arrived) implements Event {}

  /**
   * A setup of another job was taken.
   *
   * @param code under which it came into the list
   * @param what as it was given, with its code there
   */
  record Taken(UUID move, String code, MovedSetup what, OtherJob from) implements Event {}

  /** A card or the job was copied. */
  record Copied(CopyRecord copy) implements Event {}

  /**
   * A person looked after an item of a checklist, or takes that back.
   *
   * @param item its id in the checklist
   */
  record ItemTicked(String item, boolean ticked, String by) implements Event {}

  /** Whether the day can begin, or end, was asked and answered. */
  record ReadyAsked(ReadyRecord said) implements Event {}

  /** Cards, the job and backups were compared; its evidence lies beside the log. */
  record Compared(ComparedCopies found) implements Event {}

  /** Written by a newer version; it stays in the log and has no effect here. */
  record Unknown(String type) implements Event {}
}
