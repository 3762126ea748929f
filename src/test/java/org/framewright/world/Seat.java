package org.framewright.world;

/** A computer that somebody works at. */
enum Seat {
  /** Beside the camera; the job's folder lies on it. */
  LAPTOP("laptop", "The laptop"),
  /** On the same folder. */
  CART("cart", "The computer on the cart"),
  /** Elsewhere, on a copy of the folder that is synchronised now and then. */
  AWAY("away", "The computer in the office");

  private final String station;
  private final String said;

  Seat(String station, String said) {
    this.station = station;
    this.said = said;
  }

  String station() {
    return station;
  }

  String said() {
    return said;
  }
}
