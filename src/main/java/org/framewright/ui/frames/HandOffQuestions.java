package org.framewright.ui.frames;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.StudioDetail;

/** What is asked before frames are handed off, and what is said afterwards. */
final class HandOffQuestions {
  private static final String SHOW_PACKAGE = "frames.showPackage";
  private static final String PLACE = "handoff.place";

  private final Desk desk;
  private final Texts texts;
  private final HandOffModel handOff;
  private final ClientListModel clientList;

  private HandOffQuestions(Desk desk, HandOffModel handOff, ClientListModel clientList) {
    this.desk = desk;
    this.texts = desk.texts();
    this.handOff = handOff;
    this.clientList = clientList;
  }

  static HandOffQuestions of(Desk desk, JobSession session) {
    var handOff =
        new HandOffModel(
            session,
            desk.tasks(),
            desk.texts(),
            () -> StudioDetail.studio(desk.preferences()),
            desk::trouble);
    handOff.startAt(
        DefaultPlace.PACKAGES.kept(desk.preferences()).or(() -> desk.preferences().path(PLACE)));
    return new HandOffQuestions(
        desk, handOff, new ClientListModel(session, desk.tasks(), desk.texts(), desk::trouble));
  }

  /** Shows the package that was made last where it lies. */
  Command showPackage() {
    return new Command(
        SHOW_PACKAGE,
        texts.get("command." + SHOW_PACKAGE),
        Keys.shift(KeyCode.O),
        () -> handOff.made().get().ifPresent(desk::showInFileManager),
        Bindings.createBooleanBinding(() -> handOff.made().get().isPresent(), handOff.made()));
  }

  /** Where the selects go; then hands them off. */
  void ask() {
    startAtTheUsualPlace();
    handOff.prepare(this::askWhereTo);
  }

  /** What the client wrote; then what would go of it. */
  void askForList() {
    startAtTheUsualPlace();
    clientList.begin(
        () -> {
          var dialog = new ClientListDialog(clientList, desk);
          desk.dialogs()
              .show(
                  new DialogSpec(
                      texts.get("clientList.title"),
                      dialog.node(),
                      dialog.focus(),
                      texts.get("clientList.do"),
                      clientList.ready(),
                      () -> {
                        dialog.dispose();
                        clientList.named().ifPresent(it -> handOff.prepare(it, this::askWhereTo));
                      },
                      dialog::dispose));
        });
  }

  /** The settings may say another one since. */
  private void startAtTheUsualPlace() {
    DefaultPlace.PACKAGES
        .kept(desk.preferences())
        .ifPresent(place -> handOff.startAt(Optional.of(place)));
  }

  private void askWhereTo() {
    var plan = handOff.plan().get().orElseThrow();
    var dialog = new HandOffDialog(handOff, plan, desk);
    var title = texts.get("frames.handOffTitle");
    desk.dialogs()
        .show(
            plan.selects().isEmpty()
                ? DialogSpec.reading(title, dialog.node(), dialog.node())
                : DialogSpec.asking(
                    title,
                    dialog.node(),
                    dialog.focus(),
                    texts.get("frames.handOffDo", plan.selects().size(), plan.files()),
                    handOff.ready(),
                    this::deliver));
  }

  private void deliver() {
    Optional.ofNullable(handOff.place().get())
        .ifPresent(place -> desk.preferences().put(PLACE, place.toString()));
    handOff.deliver(
        ended -> {
          if (ended.done()) {
            clientList.clear();
            desk.answer(ended.what(), SHOW_PACKAGE);
          } else {
            var body = new VBox(WrappedText.of(ended.what()), WrappedText.of(ended.remedy()));
            body.getStyleClass().add("trouble");
            desk.dialogs().show(DialogSpec.reading(texts.get("frames.handOffNot"), body, body));
          }
        });
  }
}
