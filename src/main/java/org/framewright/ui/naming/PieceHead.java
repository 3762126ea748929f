package org.framewright.ui.naming;

import java.util.function.BiConsumer;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.VBox;
import org.framewright.naming.FieldType;
import org.framewright.naming.Proposal.Role;
import org.framewright.ui.look.Texts;

/** The head of a column of the names: a menu of what the piece is, and what its field takes. */
final class PieceHead extends VBox {
  private final Texts texts;
  private final ComboBox<Role> role = new ComboBox<>();
  private final Label type = new Label();
  private boolean showing;

  /**
   * @param say gets the piece's number and what a person says that it is
   */
  PieceHead(int number, Texts texts, BiConsumer<Integer, Role> say) {
    this.texts = texts;
    role.setId("piece-" + number);
    role.setCellFactory(_ -> new RoleCell(true));
    role.setButtonCell(new RoleCell(false));
    role.setMaxWidth(Double.MAX_VALUE);
    role.valueProperty()
        .addListener(
            (_, _, now) -> {
              if (!showing && now != null) {
                say.accept(number, now);
              }
            });
    type.getStyleClass().add("piece-type");
    getStyleClass().add("piece-head");
    getChildren().setAll(role, type);
  }

  ComboBox<Role> menu() {
    return role;
  }

  void show(Proposed.Column column) {
    var piece = column.piece();
    showing = true;
    if (!role.getItems().equals(piece.choices())) {
      role.getItems().setAll(piece.choices());
    }
    role.setValue(piece.role());
    showing = false;
    type.setText(typeWord(column));
    role.setAccessibleText(
        texts.get(
            "proposal.pieceSpoken",
            piece.number(),
            texts.apart(piece.values().stream().limit(3).toArray(String[]::new))));
  }

  private String typeWord(Proposed.Column column) {
    var what = texts.get("proposal.type." + column.type().orElse(FieldType.FIXED).word());
    return column.piece().optional() ? texts.get("proposal.notInAll", what) : what;
  }

  /** A role by its word, in the menu with what it means. */
  private final class RoleCell extends ListCell<Role> {
    private final boolean inMenu;

    RoleCell(boolean inMenu) {
      this.inMenu = inMenu;
    }

    @Override
    protected void updateItem(Role role, boolean empty) {
      super.updateItem(role, empty);
      setText(
          empty || role == null
              ? ""
              : inMenu ? RoleWords.explained(texts, role) : RoleWords.word(texts, role));
    }
  }
}
