package org.framewright.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.naming.Convention;

/**
 * Where the program keeps its own files in a job folder.
 *
 * @param root the job folder, absolute
 */
record JobLayout(Path root) {
  /** The folder of the program's own files. */
  static final String OWN = ".framewright";

  /** The largest convention that is read, in bytes. */
  private static final int LARGEST_CONVENTION = 1 << 20;

  Path own() {
    return root.resolve(OWN);
  }

  Path convention() {
    return own().resolve("convention.yaml");
  }

  Path log() {
    return own().resolve("log");
  }

  /** The convention as it was when the job began. */
  Convention readConvention() throws IOException, JobException {
    var file = convention();
    return switch (parsed(file)) {
      case Convention.Parsed.Sound sound -> sound.convention();
      case Convention.Parsed.Faulty faulty -> {
        var first = faulty.findings().getFirst();
        throw new JobException(
            Text.of("the job's convention cannot be read: {0}", first.said()),
            file + ", line " + first.line() + ", column " + first.column(),
            first.fix().orElse(Text.of("Put the convention back as it was when the job began.")));
      }
    };
  }

  private Convention.Parsed parsed(Path file) throws IOException, JobException {
    try {
      if (PlainFiles.look(own()).isEmpty()) {
        throw new NoSuchFileException(own().toString());
      }
      PlainFiles.requireFolder(own());
      var text =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(PlainFiles.read(file, LARGEST_CONVENTION)))
              .toString();
      return Convention.parse(text.startsWith("\uFEFF") ? text.substring(1) : text, "" + file);
    } catch (CharacterCodingException e) {
      throw new JobException(
          Text.of("the job's convention is not text in UTF-8"),
          file.toString(),
          Text.of("Put the convention back as it was when the job began."));
    } catch (NoSuchFileException e) {
      throw new JobException(
          Files.isDirectory(root)
              ? Text.of("this is no job folder")
              : Text.of("there is no such folder"),
          root.toString(),
          Text.of("Give the folder that a job was started in; it holds a folder {0}.", OWN));
    }
  }

  /** Refuses a job whose log is not there: it was taken away, or the folder is half a copy. */
  void requireLog() throws JobException {
    try {
      PlainFiles.requireFolder(log());
    } catch (NoSuchFileException e) {
      throw new JobException(
          Text.of("the job's log is missing"),
          log().toString(),
          Text.of("Bring the folder {0} back from a copy of the job.", OWN));
    } catch (IOException e) {
      throw new JobException(FileProblems.of(e));
    }
  }
}
