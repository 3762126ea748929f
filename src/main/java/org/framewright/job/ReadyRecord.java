package org.framewright.job;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/**
 * What was answered when somebody asked whether the day can begin, or end.
 *
 * @param wrap whether it is of the evening
 * @param answer {@code ready}, {@code ready-but-for} or {@code not-ready}
 * @param told what was missing, a line each
 * @param restsOn what the answer rests on, such as which disk; it lapses when one of these changes
 */
public record ReadyRecord(
    boolean wrap, String answer, List<String> told, SequencedMap<String, String> restsOn) {
  public ReadyRecord {
    told = List.copyOf(told);
    restsOn = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(restsOn));
  }
}
