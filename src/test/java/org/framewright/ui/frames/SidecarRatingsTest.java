package org.framewright.ui.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.handoff.RatingSidecars;
import org.framewright.job.TestClock;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SidecarRatingsTest {
  @TempDir private Path folder;

  private final List<String> said = new ArrayList<>();
  private final List<RatingSidecars.Planned> asked = new ArrayList<>();
  private FramesOfASetup frames;
  private SidecarRatings ratings;

  @BeforeEach
  void framesOfOneSetup() throws Exception {
    frames = FramesOfASetup.in(folder, new TestClock("2026-11-23T09:00:00Z"), 2);
    ratings =
        new SidecarRatings(
            frames.session(),
            Tasks.immediate(),
            Texts.in(Locale.ENGLISH),
            said::add,
            frames.troubles()::add);
  }

  @AfterEach
  void close() {
    frames.close();
  }

  @Test
  void nothingIsAskedWhereNobodyRatedAnything() {
    ratings.prepare(asked::addAll);
    assertThat(asked).isEmpty();
    assertThat(said).containsExactly("The frames’ files say the same ratings already.");
  }

  @Test
  void whatIsWrittenIsAskedBeforeAndSaidAfterwards() {
    frames.model().rate(4);
    ratings.prepare(asked::addAll);
    assertThat(asked).hasSize(1);
    assertThat(asked.getFirst().sidecar()).doesNotExist();
    assertThat(ratings.question(asked)).contains("1 new sidecar");
    ratings.write(asked);
    assertThat(asked.getFirst().sidecar()).content().contains("Rating>4<");
    assertThat(said).containsExactly("1 rating is in its sidecar now.");
  }

  @Test
  void whatStayedAsItWasIsNamed() throws Exception {
    frames.model().rate(4);
    ratings.prepare(asked::addAll);
    Files.writeString(asked.getFirst().sidecar(), "of another program");
    ratings.write(asked);
    assertThat(said.getFirst())
        .contains("0 ratings", "1 is not", "another program changed this sidecar meanwhile");
    assertThat(asked.getFirst().sidecar()).hasContent("of another program");
  }
}
