package org.framewright.ui.board;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Dialogs;
import org.framewright.ui.page.StepWords;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.JobSession;

/** What is asked before something is done with a setup: who agrees, why, what it is. */
final class SetupQuestions {
  private static final String COMMENT_BY = "comment.by";

  private final Desk desk;
  private final Texts texts;
  private final JobSession session;
  private final BoardModel model;
  private final ViewWords views;
  private final Supplier<Region> sheet;

  /**
   * @param sheet the paper of the page, which is there from then on: questions lie on it, so that
   *     the picture is seen
   */
  SetupQuestions(
      Desk desk, JobSession session, BoardModel model, ViewWords views, Supplier<Region> sheet) {
    this.sheet = sheet;
    this.desk = desk;
    this.texts = desk.texts();
    this.session = session;
    this.model = model;
    this.views = views;
  }

  /** Asks what a setup is, for one that comes or one that the list says wrong. */
  void setup(SetupDraft.Kind kind) {
    var chosen = model.selectedRow().map(SetupRow::setup);
    var from = kind == SetupDraft.Kind.ADDED ? Optional.<Setup>empty() : chosen;
    var job = session.job();
    var draft =
        new SetupDraft(
            kind, from, session.view().get().list(), labels(), job::tryNames, desk.tasks(), texts);
    var form = new SetupForm(draft, texts, views.all());
    var key = "setup." + kind.name().toLowerCase(Locale.ROOT);
    var code = chosen.map(Setup::code).orElse("");
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    texts.get(key + ".title", code),
                    form,
                    form.focus(),
                    texts.get(key + ".do", code),
                    draft.ready(),
                    () ->
                        draft
                            .setup()
                            .ifPresent(
                                kind == SetupDraft.Kind.CHANGED ? model::change : model::add))
                .about("setup"));
  }

  /** Shows another order of what is left, and asks whether the list is to have it. */
  void order(ProposedOrder order) {
    var form = new OrderForm(order, texts);
    var title = texts.get("order.title");
    desk.dialogs()
        .show(
            order.isBetter()
                ? DialogSpec.asking(
                        title,
                        form,
                        form.focus(),
                        texts.get("order.do"),
                        () -> model.order(order.codes()))
                    .about("order")
                : DialogSpec.reading(title, form, form.focus()).about("order"));
  }

  /** What names need of a setup besides its code and its views. */
  private List<String> labels() {
    return session.job().listFields().entrySet().stream()
        .filter(field -> !List.of(Reserved.SETUP, Reserved.VIEW).contains(field.getKey()))
        .map(Map.Entry::getValue)
        .toList();
  }

  /**
   * Asks whose agreement it is, and ticks the sign-off.
   *
   * @param dialogs the layer of the window in which it is asked
   * @param on the paper that the question lies on
   * @param over runs when the question is gone, answered or not
   */
  void whoAgrees(Dialogs dialogs, Region on, String code, Runnable over) {
    model.row(code).ifPresent(row -> whoAgrees(dialogs, on, row, over));
  }

  private void whoAgrees(Dialogs dialogs, Region on, SetupRow row, Runnable over) {
    var agreed = session.view().get().state().setups().values().stream();
    var who = new SignOffModel(SignOffModel.before(agreed), computers());
    var form = new SignOffForm(who, texts, missing(row));
    dialogs.show(
        new DialogSpec(
                texts.get("board.agree.title", row.code()),
                form,
                form.focus(),
                texts.get("board.agree.do", row.code()),
                who.ready(),
                () -> {
                  who.name().ifPresent(name -> model.signOff(row.code(), name));
                  over.run();
                },
                over,
                Optional.of(on))
            .about("sign-off"));
  }

  /** This computer, as the job calls it and as others may. */
  private Set<String> computers() {
    var station = session.job().station();
    return Set.of(station, station.replaceFirst("-[0-9a-f]{8}$", ""), "localhost");
  }

  /** That a wanted view has no frame, which is seen best before the set moves on. */
  private String missing(SetupRow row) {
    var without = model.withoutFrames(row).stream().map(views::word).toList();
    return without.isEmpty() ? "" : texts.get("board.agree.missing", texts.formats().list(without));
  }

  /** Asks whose agreement it is to the chosen setup. */
  void whoAgrees() {
    whoAgrees(desk.dialogs(), sheet.get(), model.selected().get(), () -> {});
  }

  /** Asks what is to be said of the chosen setup. */
  void comment() {
    model
        .selectedRow()
        .ifPresent(
            row ->
                comment(
                    StepWords.called(row.setup()),
                    (text, by) -> model.comment(row.code(), text, by)));
  }

  /** Asks what is to be said of the frame that is looked at. */
  void commentFrame() {
    model
        .looked()
        .look()
        .get()
        .frame()
        .ifPresent(
            frame -> comment(model.called(frame), (text, by) -> model.comment(frame, text, by)));
  }

  private void comment(String of, BiConsumer<String, String> answer) {
    var form = new CommentForm(texts, desk.preferences().get(COMMENT_BY).orElse(""));
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    texts.get("comment.title", of),
                    form,
                    form.focus(),
                    texts.get("comment.do"),
                    form.ready(),
                    () -> {
                      desk.preferences().put(COMMENT_BY, form.by());
                      answer.accept(form.text(), form.by());
                    })
                .on(sheet.get()));
  }

  /** Asks why the chosen setup is to be shot again, and makes it a pickup. */
  void whyAgain() {
    askWhy("pickup", false, model::pickup);
  }

  /** Asks why the chosen setup is not to be shot, and drops it. */
  void whyNot() {
    askWhy("drop", true, model::drop);
  }

  private void askWhy(String what, boolean needed, Consumer<String> answer) {
    model
        .selectedRow()
        .ifPresent(
            row ->
                ask(
                    texts.get("board." + what + ".title", row.code(), row.setup().title()),
                    texts.get("board.why"),
                    texts.get("board." + what + ".do", row.code()),
                    needed,
                    answer));
  }

  private void ask(
      String title, String question, String confirm, boolean needed, Consumer<String> answer) {
    var field = new TextField();
    field.setId("dialog-field");
    field.setAccessibleText(question);
    var label = new Label(question);
    label.setLabelFor(field);
    var body = new VBox(label, field);
    body.getStyleClass().add("question");
    var ready =
        Bindings.createBooleanBinding(
            () -> !needed || !field.getText().isBlank(), field.textProperty());
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    title,
                    body,
                    field,
                    confirm,
                    ready,
                    () -> answer.accept(field.getText().strip()))
                .on(sheet.get()));
  }
}
