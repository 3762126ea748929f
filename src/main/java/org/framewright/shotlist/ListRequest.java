package org.framewright.shotlist;

import java.util.HashMap;
import java.util.Map;

/** What is known before a list is read. */
final class ListRequest {
  static final ListRequest NONE = new ListRequest(ListOptions.NONE, ListFit.ANY);

  private final ListOptions options;
  private final ListFit fit;
  private final Map<String, String> labels = new HashMap<>();

  ListRequest(ListOptions options, ListFit fit) {
    this.options = options;
    this.fit = fit;
    fit.fields().forEach((label, field) -> labels.put(Heading.plain(label), field));
  }

  /** What a person says about it. */
  ListOptions options() {
    return options;
  }

  /** What its setups' names need. */
  ListFit fit() {
    return fit;
  }

  /** The convention's field for a heading, see {@link Heading#plain}; null if it has none. */
  String field(String plainHeading) {
    return labels.get(plainHeading);
  }
}
