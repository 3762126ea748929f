package org.framewright.ui.board;

import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Step;

/** What was done to the list, in a sentence of what is so now. */
final class StepWords {
  private static final int LONGEST_TITLE = 48;

  private final Texts texts;
  private final Function<String, Optional<Setup>> setups;
  private final Function<String, String> viewWord;

  /**
   * @param setups the setup of a code, if the list has it
   * @param viewWord what a view's code means
   */
  StepWords(
      Texts texts, Function<String, Optional<Setup>> setups, Function<String, String> viewWord) {
    this.texts = texts;
    this.setups = setups;
    this.viewWord = viewWord;
  }

  /** What became of what a person did. */
  String of(BoardModel.Answer answer) {
    return switch (answer) {
      case BoardModel.Answer.Taken(var step) -> of(step);
      case BoardModel.Answer.Undone(var step) ->
          step.map(one -> texts.get("answer.undone", of(one)))
              .orElseGet(() -> texts.get("answer.undone.tick"));
      case BoardModel.Answer.Redone(var step) ->
          step.map(this::of).orElseGet(() -> texts.get("answer.nothingUndone"));
    };
  }

  private String of(Step step) {
    return switch (step) {
      case Step.Ticked(var marks) -> marks.stream().map(this::of).collect(Collectors.joining(" "));
      case Step.Moved(_, var moved) -> texts.get("answer.moved", called(moved));
      case Step.Added(var setup, _) -> texts.get("answer.added", called(setup));
      case Step.Changed(var setup) -> texts.get("answer.changed", called(setup));
    };
  }

  private String of(Step.Mark mark) {
    var key = "answer." + mark.state().word();
    var details = mark.details();
    if (details.view().isPresent()) {
      return texts.get(
          "answer.view", called(mark.setup()), viewWord.apply(details.view().orElseThrow()));
    }
    var more = details.by().or(details::reason).filter(text -> !text.isBlank());
    return more.filter(_ -> texts.has(key + ".why"))
        .map(text -> texts.get(key + ".why", called(mark.setup()), text))
        .orElseGet(() -> texts.get(key, called(mark.setup())));
  }

  private String called(String code) {
    return setups.apply(code).map(StepWords::called).orElse(code);
  }

  private static String called(Setup setup) {
    var title = setup.title();
    var end =
        title.offsetByCodePoints(
            0, Math.min(LONGEST_TITLE, title.codePointCount(0, title.length())));
    return (setup.code() + " " + title.substring(0, end) + (end < title.length() ? "…" : ""))
        .strip();
  }
}
