package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.junit.jupiter.api.Test;

class HandOffDescriptionTest {
  @Test
  void whatWentIsCountedAndItsPlaceStandsLast() {
    var done = new Delivery.Delivered(3, Path.of("package"), 95, 249, 1, List.of());
    assertThat(HandOffDescription.delivered(done))
        .containsExactly(
            "95 selects in 249 files, each copied and read again: hand-off 3", "package");
    assertThat(HandOffDescription.planned(new HandOffPlan("all", List.of(), List.of())))
        .containsExactly("0 selects in 0 files");
  }

  @Test
  void whatCameBackIsCountedAndWhatIsWrongWithItFollows() {
    var bag =
        new BagCheck(
            4,
            List.of("gone.jpg"),
            List.of("other.jpg"),
            List.of("new.jpg"),
            List.of(new Problem("this is no checksum", "line 3", "")));
    var returns =
        new Returns(
            List.of(
                new Returns.Answer("A_1", "001", Returns.State.ANSWERED, List.of("A_1_v01.jpg")),
                new Returns.Answer("A_2", "001", Returns.State.MISSING, List.of())),
            List.of(new Returns.Extra("final.jpg", "it is no name")),
            Optional.of(bag),
            List.of());
    assertThat(HandOffDescription.returned(returns))
        .containsExactly(
            "1 of 2 selects came back under a name of the convention",
            "A_2 is missing",
            "extra: final.jpg: it is no name",
            "in its manifest: line 3: this is no checksum",
            "not what its manifest says: other.jpg",
            "in its manifest, not there: gone.jpg",
            "there, not in its manifest: new.jpg");
  }
}
