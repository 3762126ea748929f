package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import org.framewright.handoff.PastHandOffs;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.StudioDetail;

/** What the commands of the page do, and when they can, by the part that is seen. */
final class HandOffDeeds {
  private static final String PLACE = "handoff.place";

  private final Desk desk;
  private final Texts texts;
  private final HandOffModels models;
  private final Consumer<Part> turnTo;

  /**
   * @param turnTo brings a part to the front
   */
  HandOffDeeds(Desk desk, HandOffModels models, Consumer<Part> turnTo) {
    this.desk = desk;
    this.texts = desk.texts();
    this.models = models;
    this.turnTo = turnTo;
  }

  private Part part() {
    return models.part().get();
  }

  boolean isIdle() {
    return switch (part()) {
      case GOES -> models.handOff().running().get().isEmpty();
      case WENT -> true;
      case CHECK -> models.check().running().get().isEmpty();
      case BACK -> models.returns().running().get().isEmpty();
    };
  }

  boolean canMain() {
    return switch (part()) {
      case GOES ->
          models.handOff().ready().get()
              && models.handOff().ended().get().filter(Ended::isWhole).isEmpty();
      case WENT -> chosenFolder().isPresent();
      case CHECK -> isIdle() && models.check().folder().get().isPresent();
      case BACK -> isIdle() && models.returns().folder().get().isPresent();
    };
  }

  /** What the page is for: hands off, checks, reads again. */
  void main() {
    switch (part()) {
      case GOES -> deliver();
      case WENT ->
          chosenFolder()
              .ifPresent(
                  at -> {
                    models.check().check(at);
                    turnTo.accept(Part.CHECK);
                  });
      case CHECK -> models.check().again();
      case BACK -> models.returns().again();
    }
  }

  private void deliver() {
    Optional.ofNullable(models.handOff().place().get())
        .ifPresent(place -> desk.preferences().put(PLACE, place.toString()));
    models.handOff().deliver();
  }

  void stop() {
    switch (part()) {
      case GOES -> models.handOff().stop();
      case WENT -> {}
      case CHECK -> models.check().stop();
      case BACK -> models.returns().stop();
    }
  }

  void choose() {
    switch (part()) {
      case GOES ->
          desk.files()
              .folder(
                  texts.get("handoff.placeTitle"),
                  Optional.ofNullable(models.handOff().place().get()))
              .ifPresent(models.handOff().place()::set);
      case WENT -> {}
      case CHECK ->
          desk.files()
              .folder(texts.get("handoff.check.title"), models.check().folder().get())
              .ifPresent(models.check()::check);
      case BACK ->
          desk.files()
              .folder(texts.get("handoff.returns.choose"), models.returns().folder().get())
              .ifPresent(models.returns()::read);
    }
  }

  /** What can be passed on. */
  String sentence() {
    return switch (part()) {
      case GOES -> models.handOff().ended().get().map(Ended::sentence).orElse("");
      case WENT -> models.earlier().sentence();
      case CHECK -> models.check().answer().get().map(CheckModel.Answer::sentence).orElse("");
      case BACK -> "";
    };
  }

  void say() {
    Clipboard.getSystemClipboard().setContent(Map.of(DataFormat.PLAIN_TEXT, sentence()));
    desk.say(texts.get("handoff.said"));
  }

  private Optional<Path> chosenFolder() {
    return Optional.ofNullable(models.earlier().chosen().get())
        .filter(one -> one.state() == PastHandOffs.State.OUT)
        .flatMap(PastHandOffs::folder);
  }

  /** What a file manager can show. */
  Optional<Path> shown() {
    return switch (part()) {
      case GOES -> models.handOff().folders().reduce((_, last) -> last);
      case WENT -> chosenFolder();
      case CHECK -> models.check().folder().get();
      case BACK ->
          Stream.ofNullable(models.returns().chosen().get())
              .flatMap(line -> line.came().stream())
              .findFirst()
              .or(() -> models.returns().folder().get());
    };
  }

  void show() {
    shown().ifPresent(desk::showInFileManager);
  }

  void said(String what) {
    desk.answer(what, HandOffScreen.ID + ".undo");
  }

  void askRename() {
    models
        .returns()
        .askRenames(
            question -> {
              switch (question) {
                case ReturnsModel.Question.Names(var renames) ->
                    desk.dialogs()
                        .show(
                            new RenameDialog(renames, texts)
                                .spec(() -> models.returns().rename(renames, this::said)));
                case ReturnsModel.Question.Order(var left) -> {
                  var body = WrappedText.of(texts.get("handoff.order.what", left.renames()));
                  desk.dialogs()
                      .show(
                          DialogSpec.asking(
                              texts.get("handoff.order.title"),
                              body,
                              body,
                              texts.get("handoff.order.do"),
                              () -> models.returns().recover(this::said)));
                }
              }
            });
  }

  void askDeliver() {
    models
        .returns()
        .answer()
        .get()
        .ifPresent(
            answer -> {
              models
                  .client()
                  .begin(
                      answer.returns(),
                      DefaultPlace.PACKAGES
                          .kept(desk.preferences())
                          .or(() -> desk.preferences().path(PLACE)));
              desk.dialogs()
                  .show(
                      new ClientDeliveryDialog(models.client(), desk).spec(this::deliverToClient));
            });
  }

  /** What was delivered stands among the hand-offs, with its sentence and its checks. */
  private void deliverToClient() {
    models
        .client()
        .planned()
        .get()
        .ifPresent(
            planned ->
                models
                    .returns()
                    .deliver(
                        planned,
                        StudioDetail.studio(desk.preferences()),
                        ended -> {
                          if (ended.isWhole()) {
                            models.earlier().chosen().set(null);
                            models.earlier().look();
                            turnTo.accept(Part.WENT);
                          }
                        }));
  }

  void askForList() {
    turnTo.accept(Part.GOES);
    var list = models.list();
    list.begin(
        () -> {
          var dialog = new ClientListDialog(list, desk);
          desk.dialogs()
              .show(
                  new DialogSpec(
                      texts.get("clientList.title"),
                      dialog.node(),
                      dialog.focus(),
                      texts.get("clientList.do"),
                      list.ready(),
                      () -> {
                        dialog.dispose();
                        list.named().ifPresent(models.handOff()::askFor);
                      },
                      dialog::dispose));
        });
  }

  /** The settings may say another one since. */
  void startAtTheUsualPlace(boolean first) {
    var usual = DefaultPlace.PACKAGES.kept(desk.preferences());
    if (first || usual.isPresent()) {
      models.handOff().startAt(usual.or(() -> desk.preferences().path(PLACE)));
    }
  }
}
