package org.framewright.share;

import java.util.List;
import java.util.SequencedMap;

/**
 * One moment as one role sees it, in pieces of JSON that are made once for all devices of the role.
 *
 * @param order the codes of the list
 * @param setups each setup, by its code
 * @param client what the client is shown
 * @param day how the day goes, but for the text of why there is no forecast
 */
record Fold(
    Moment moment,
    Role role,
    String order,
    SequencedMap<String, String> setups,
    String client,
    List<Said> comments,
    String onSet,
    String day) {

  /**
   * A comment.
   *
   * @param json all of it but whose it is, and the brace that closes it
   */
  record Said(String json, String station, long number) {}

  /** Whether two say the same, whatever moments they are of. */
  boolean saysTheSameAs(Fold other) {
    return moment.lost() == other.moment().lost()
        && order.equals(other.order)
        && onSet.equals(other.onSet)
        && client.equals(other.client)
        && day.equals(other.day)
        && moment.day().why().equals(other.moment().day().why())
        && comments.equals(other.comments)
        && setups.equals(other.setups);
  }
}
