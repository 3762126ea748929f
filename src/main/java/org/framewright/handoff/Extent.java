package org.framewright.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;

/**
 * How much of what was chosen is handed off.
 *
 * @param setups the codes of the setups whose frames go; all where there are none
 * @param pictures which of a frame's pictures go
 * @param onlyNew whether a select that an earlier hand-off had stays
 * @param slates whether the slates of the setups of which frames go, go along
 */
public record Extent(List<String> setups, Pictures pictures, boolean onlyNew, boolean slates) {
  /** All of it. */
  public static final Extent ALL = new Extent(List.of(), Pictures.ALL, false);

  private static final int NAMED = 3;

  /** The same without slates. */
  public Extent(List<String> setups, Pictures pictures, boolean onlyNew) {
    this(setups, pictures, onlyNew, false);
  }

  /** Which of a frame's pictures are handed off; what describes them goes with them. */
  public enum Pictures {
    ALL(null),
    RAW(FileRole.RAW),
    JPEG(FileRole.JPEG);

    private final FileRole role;

    Pictures(FileRole role) {
      this.role = role;
    }

    /** Why a frame stays that has no such picture. */
    Text missing() {
      return Text.of(this == JPEG ? "it has no JPEG" : "it has no raw picture");
    }

    /**
     * A frame with these pictures only, and with the files that describe one of them or the frame;
     * nothing where it has no such picture.
     */
    Optional<Frame> of(Frame frame) {
      if (role == null) {
        return Optional.of(frame);
      }
      var left = new ArrayList<FrameFile>();
      var stays = new ArrayList<String>();
      boolean hasOne = false;
      for (var file : frame.files()) {
        if (file.role() == role) {
          hasOne = true;
          left.add(file);
        } else if (file.role() == FileRole.SIDECAR || file.role() == FileRole.COMPANION) {
          left.add(file);
        } else {
          stays.add(frame.ending(file) + ".");
        }
      }
      // A.CR3.xmp says something of A.CR3, and stays where that stays.
      left.removeIf(file -> stays.stream().anyMatch(frame.ending(file)::startsWith));
      return hasOne
          ? Optional.of(
              new Frame(
                  frame.id(),
                  frame.knownAs(),
                  frame.folder(),
                  frame.stem(),
                  left,
                  frame.capture(),
                  frame.complete()))
          : Optional.empty();
    }
  }

  public Extent {
    setups = List.copyOf(setups);
  }

  /** What is added to how frames were chosen: {@code rated 4 or higher, of setup 001, only raw}. */
  String after(String chosenBy) {
    var words = new ArrayList<>(List.of(chosenBy));
    if (!setups.isEmpty()) {
      var named = String.join(", ", setups.stream().limit(NAMED).toList());
      int more = setups.size() - NAMED;
      words.add(
          (setups.size() == 1 ? "of setup " : "of setups ")
              + named
              + (more > 0 ? " and " + more + " more" : ""));
    }
    if (pictures != Pictures.ALL) {
      words.add(pictures == Pictures.JPEG ? "only JPEG" : "only raw");
    }
    if (onlyNew) {
      words.add("only what no earlier hand-off had");
    }
    if (slates) {
      words.add("with the slates");
    }
    return String.join(", ", words);
  }
}
