package org.framewright.share;

/** What was sent is nothing that a page of ours sends. */
final class MalformedRequest extends Exception {
  private static final long serialVersionUID = 1L;

  MalformedRequest(String why) {
    super(why);
  }
}
