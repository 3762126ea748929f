package org.framewright.naming;

import java.util.Set;

/**
 * The names in a convention that mean something to the program. All others are their author's own.
 * {@code docs/conventions.md} says what each is for.
 */
public final class Reserved {
  /** Kind of name: the job folder. A job needs it. */
  public static final String JOB = "job";

  /** Kind of name: a frame as it is renamed. */
  public static final String FRAME = "frame";

  /** Kind of name: a frame that shows a slate; without it, such a frame keeps its name. */
  public static final String SLATE = "slate";

  /** Kind of name: a frame in the package for the retoucher. */
  public static final String SELECT = "select";

  /** Kind of name: what comes back from the retoucher. */
  public static final String RETOUCHED = "retouched";

  /** Kind of name: what is delivered to the client; without it, that of what comes back. */
  public static final String DELIVERY = "delivery";

  /** Field: the code of the setup that a frame belongs to. */
  public static final String SETUP = "setup";

  /** Field: the view of the setup that a frame shows. */
  public static final String VIEW = "view";

  /** Folder: frames arrive in it. Every convention has it. */
  public static final String FRAMES = "frames";

  /** Folder: selects are meant for it. */
  public static final String SELECTS = "selects";

  static final Set<String> KINDS = Set.of(JOB, FRAME, SLATE, SELECT, RETOUCHED, DELIVERY);

  private Reserved() {}
}
