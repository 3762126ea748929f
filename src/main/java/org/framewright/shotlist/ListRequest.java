package org.framewright.shotlist;

/**
 * What is known before a list is read.
 *
 * @param options what a person says about it
 * @param fit what its setups' names need
 */
record ListRequest(ListOptions options, ListFit fit) {
  static final ListRequest NONE = new ListRequest(ListOptions.NONE, ListFit.ANY);
}
