package org.framewright.job;

import java.util.Collection;
import java.util.List;
import java.util.SequencedMap;
import org.framewright.base.Text;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.ShotList;

/**
 * What a job's events make. Setups are told apart by what names can tell apart, so that a tick on
 * {@code 1} still holds when the client's next list calls it {@code 001}.
 *
 * @param index the setups, in the order in which they are planned
 * @param state where they stand
 * @param values the values that the job began with
 * @param listsRead how lists of a form are to be read, where a person said so
 * @param comparisons of copies, in the order in which they were made
 * @param copies of cards and of the job, in the order in which they were made
 * @param comments of people, in the order in which they were made
 * @param moves setups that went to other jobs or came from there
 * @param slateKeys of the slates of the job, the one that new ones get first
 * @param readiness of the checks before the first frame and after the last
 * @param remarks what a person should know
 */
record Fold(
    ListIndex index,
    JobState state,
    SequencedMap<String, String> values,
    SequencedMap<ListForm, KeptOptions> listsRead,
    List<ComparedAt> comparisons,
    List<CopyRecord> copies,
    List<Comment> comments,
    SetupMoves moves,
    List<JobKey> slateKeys,
    Readiness readiness,
    List<Text> remarks) {

  ShotList list() {
    return index.list();
  }

  /** Folds events in any order. */
  static Fold of(Collection<Entry> entries) {
    var folding = new Folding();
    folding.add(entries);
    return folding.fold();
  }
}
