package org.framewright.handoff;

import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Problem;

/** How a hand-off ended. */
public sealed interface Delivery {
  /** What a person should know besides, such as what was left of an earlier hand-off. */
  List<Problem> remarks();

  /**
   * The package is in its place; every file in it was read again and is what the job holds.
   *
   * @param number the hand-off's running number in the job, from 1
   * @param folder the package
   * @param slates how many slates went along
   * @param files the copies of the frames' files
   * @param bytes the size of the payload
   */
  record Delivered(
      int number,
      Path folder,
      int selects,
      int slates,
      int files,
      long bytes,
      Described described,
      List<Problem> remarks)
      implements Delivery {
    public Delivered {
      remarks = List.copyOf(remarks);
    }

    /** One without slates that says nothing of its selects. */
    public Delivered(
        int number, Path folder, int selects, int files, long bytes, List<Problem> remarks) {
      this(number, folder, selects, 0, files, bytes, Described.NOT, remarks);
    }
  }

  /**
   * In how much a package says what the job knows of its selects.
   *
   * @param sidecars the sidecars that say it
   * @param embedded the copies that say it themselves
   */
  record Described(int sidecars, int embedded) {
    /** In nothing. */
    public static final Described NOT = new Described(0, 0);
  }

  /** Somebody cancelled; nothing is left of it, unless the remarks say so. */
  record Cancelled(List<Problem> remarks) implements Delivery {
    public Cancelled {
      remarks = List.copyOf(remarks);
    }
  }

  /** It was not begun; no package was written. */
  record Refused(Problem problem, List<Problem> remarks) implements Delivery {
    public Refused {
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * A copy was not what it was made from, a file changed meanwhile, or a disk failed; nothing is
   * left of it, unless the remarks say so.
   */
  record Failed(Problem problem, List<Problem> remarks) implements Delivery {
    public Failed {
      remarks = List.copyOf(remarks);
    }
  }
}
