package org.framewright.ui.page;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.job.SlateWord;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.session.Step;

/** What was done to the list or to frames, in a sentence of what is so now. */
public final class StepWords {
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

  /** Of the steps of a job. */
  static StepWords of(Texts texts, JobSession session) {
    return new StepWords(
        texts,
        code -> session.view().get().list().setup(code),
        new ViewWords(session.job().convention())::word);
  }

  /**
   * Answers on a page what a person did, with how it is undone or done again.
   *
   * @param page its id; its commands {@code .undo} and {@code .redo} are offered
   */
  public static Consumer<Answer> answering(Desk desk, JobSession session, String page) {
    var words = of(desk.texts(), session);
    return answer ->
        desk.answer(words.of(answer), page + (answer instanceof Answer.Undone ? ".redo" : ".undo"));
  }

  /** What became of what a person did. */
  public String of(Answer answer) {
    return switch (answer) {
      case Answer.Taken(var step) -> of(step);
      case Answer.Undone(var step) ->
          step.map(one -> texts.get("answer.undone", of(one)))
              .orElseGet(() -> texts.get("answer.undone.tick"));
      case Answer.Redone(var step) ->
          step.map(this::of).orElseGet(() -> texts.get("answer.nothingUndone"));
    };
  }

  private String of(Step step) {
    return switch (step) {
      case Step.Ticked(var marks) -> marks.stream().map(this::of).collect(Collectors.joining(" "));
      case Step.Moved(_, var moved) -> texts.get("answer.moved", called(moved));
      case Step.Ordered _ -> texts.get("answer.ordered");
      case Step.Added(var setup, _) -> texts.get("answer.added", called(setup));
      case Step.Changed(var setup) -> texts.get("answer.changed", called(setup));
      case Step.Selected(var chosen, var not, _) -> selected(chosen, not);
      case Step.Rated(var frames, var rating, _) ->
          texts.get(
              rating == 0 ? "answer.notRated" : "answer.rated",
              called(frames),
              frames.count(),
              rating);
      case Step.Placed(var frames, var place, _) ->
          texts.get("answer.placed", called(frames), frames.count(), called(place.setup()));
      case Step.Commented(var setup, _, var text, _) ->
          texts.get("answer.commented", called(setup), text);
      case Step.SaidOfSlate(var frame, var word, _) -> saidOf(frame.stem(), word);
      case Step.Followed(var doubt, _) ->
          texts.get(
              doubt.lasts() ? "answer.followed" : "answer.slate.follow",
              called(doubt.says().code()),
              doubt.frame().stem());
    };
  }

  private String saidOf(String name, SlateWord word) {
    return switch (word) {
      case SlateWord.OfSetup(var setup) -> texts.get("answer.slate.of", name, called(setup));
      case SlateWord.NoSlate _ -> texts.get("answer.slate.none", name);
      case SlateWord.Backwards _ -> texts.get("answer.slate.before", name);
      case SlateWord.Follow(var onSet) ->
          texts.get("answer.slate.follow", called(onSet.orElse("")), name);
      case SlateWord.Stay _ -> texts.get("answer.slate.stay", name);
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

  private String selected(Step.Frames chosen, Step.Frames not) {
    if (chosen.count() == 0) {
      return texts.get("answer.noSelect", called(not), not.count());
    }
    return not.count() == 0
        ? texts.get("answer.select", called(chosen), chosen.count())
        : texts.get("answer.onlySelect", called(chosen), not.count());
  }

  private String called(Step.Frames frames) {
    return frames.name().orElseGet(() -> texts.get("answer.frames", frames.count()));
  }

  private String called(String code) {
    return setups.apply(code).map(StepWords::called).orElse(code);
  }

  /** What a setup is called where there is room for a line. */
  public static String called(Setup setup) {
    var title = setup.title();
    var end =
        title.offsetByCodePoints(
            0, Math.min(LONGEST_TITLE, title.codePointCount(0, title.length())));
    return (setup.code() + " " + title.substring(0, end) + (end < title.length() ? "…" : ""))
        .strip();
  }
}
