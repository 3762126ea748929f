package org.framewright.ui.handoff;

import javafx.beans.Observable;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import org.framewright.ui.page.Desk;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.StudioDetail;

/** What lives as long as the job is open, whatever becomes of the page. */
record HandOffModels(
    HandOffModel handOff,
    EarlierModel earlier,
    CheckModel check,
    ReturnsModel returns,
    ClientDeliveryModel client,
    ClientListModel list,
    ObjectProperty<Part> part) {

  static HandOffModels of(Desk desk, JobSession session) {
    return new HandOffModels(
        new HandOffModel(
            session,
            desk.tasks(),
            desk.texts(),
            () -> StudioDetail.studio(desk.preferences()),
            desk::wayTo,
            desk::trouble),
        new EarlierModel(session, desk.tasks(), desk.texts(), desk::trouble),
        new CheckModel(desk.tasks(), desk.texts(), desk.clock(), desk::trouble),
        new ReturnsModel(session, desk.tasks(), desk.texts(), desk.clock(), desk::trouble),
        new ClientDeliveryModel(session, desk.tasks(), desk.texts(), desk::wayTo, desk::trouble),
        new ClientListModel(session, desk.tasks(), desk.texts(), desk::trouble),
        new SimpleObjectProperty<>(Part.GOES));
  }

  /** All that what can be done depends on. */
  Observable[] observed() {
    return new Observable[] {
      part,
      handOff.ready(),
      handOff.running(),
      handOff.ended(),
      earlier.chosen(),
      check.answer(),
      check.running(),
      check.folder(),
      returns.answer(),
      returns.running(),
      returns.folder(),
      returns.chosen(),
      returns.canDeliver(),
      returns.canRename(),
      returns.canUndo()
    };
  }

  void close() {
    handOff.pause();
    check.close();
    returns.close();
  }
}
