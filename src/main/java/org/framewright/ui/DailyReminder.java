package org.framewright.ui;

import java.time.LocalDate;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;

/** Reminds of safety on the floor once a day, until somebody does not want it any more. */
record DailyReminder(Desk desk) {
  private static final String REMINDED = "safety.reminded";
  private static final String NEVER = "never again";

  void remind() {
    var today = LocalDate.now(desk.clock()).toString();
    if (desk.preferences()
        .get(REMINDED)
        .filter(kept -> kept.equals(today) || kept.equals(NEVER))
        .isPresent()) {
      return;
    }
    desk.preferences().put(REMINDED, today);
    var reminder = new SafetyReminder(desk.texts());
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    desk.texts().get("safety.title"),
                    reminder.node(),
                    reminder.focus(),
                    desk.texts().get("safety.do"),
                    () -> {
                      if (reminder.neverAgain()) {
                        desk.preferences().put(REMINDED, NEVER);
                      }
                    })
                .about("safety"));
  }
}
