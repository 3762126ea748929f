package org.framewright.ui.help;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.ui.help.GuideSearch.Hit;

/** Which page of the guide is read, which were before, and what was found. */
final class GuideModel {
  /** A page at one of its headings. */
  record Place(GuidePage page, String anchor) {}

  private final Guide guide;
  private final GuideSearch search;
  private final String topic;
  private final ReadOnlyObjectWrapper<Optional<Place>> place =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Hit>> hits = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyBooleanWrapper canGoBack = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyBooleanWrapper canGoForward = new ReadOnlyBooleanWrapper(false);
  private final Deque<Place> before = new ArrayDeque<>();
  private final Deque<Place> after = new ArrayDeque<>();

  /** Whether what is shown was only looked at in passing, while somebody typed. */
  private boolean glancing;

  /** The guide, opened at what it says of a topic. */
  GuideModel(Guide guide, String topic) {
    this.guide = guide;
    this.search = new GuideSearch(guide);
    this.topic = topic;
    place.set(guide.about(topic).map(page -> new Place(page, "")));
    type("");
  }

  Guide guide() {
    return guide;
  }

  /** What is read; empty where there is no guide. */
  ReadOnlyObjectProperty<Optional<Place>> place() {
    return place.getReadOnlyProperty();
  }

  /** What was found of the words; every page where none were typed. */
  ReadOnlyObjectProperty<List<Hit>> hits() {
    return hits.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty canGoBack() {
    return canGoBack.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty canGoForward() {
    return canGoForward.getReadOnlyProperty();
  }

  /** Looks for words. */
  void type(String words) {
    hits.set(
        GuideSearch.words(words).isEmpty()
            ? guide.pages().stream().map(GuideModel::whole).toList()
            : search.find(words));
  }

  private static Hit whole(GuidePage page) {
    return new Hit(page.name(), page.title(), "", "", 0);
  }

  /** Whether a page helps with what one came from. */
  boolean isAboutHere(Hit hit) {
    return guide.about(topic).filter(page -> page.name().equals(hit.page())).isPresent();
  }

  /** Turns to what was found. */
  void turnTo(Hit hit) {
    guide.page(hit.page()).ifPresent(page -> turnTo(new Place(page, hit.anchor())));
  }

  /** Shows what was found; one goes back from there to what was read before, in one step. */
  void glanceAt(Hit hit) {
    guide
        .page(hit.page())
        .ifPresent(
            page -> {
              var next = new Place(page, hit.anchor());
              if (glancing) {
                show(next);
              } else {
                turnTo(next);
              }
              glancing = true;
            });
  }

  /** Turns to the page of all pages. */
  void contents() {
    guide.page(Guide.INDEX).ifPresent(page -> turnTo(new Place(page, "")));
  }

  /** Follows a link of the page; one that leads out of the guide leads nowhere. */
  void follow(String link) {
    var here = place.get();
    var page = Guide.name(link).isEmpty() ? here.map(Place::page) : guide.page(Guide.name(link));
    page.ifPresent(one -> turnTo(new Place(one, Guide.anchor(link))));
  }

  private void turnTo(Place next) {
    glancing = false;
    if (place.get().filter(next::equals).isPresent()) {
      return;
    }
    place.get().ifPresent(before::push);
    after.clear();
    show(next);
  }

  void back() {
    step(before, after);
  }

  void forward() {
    step(after, before);
  }

  private void step(Deque<Place> from, Deque<Place> to) {
    glancing = false;
    if (!from.isEmpty()) {
      place.get().ifPresent(to::push);
      show(from.pop());
    }
  }

  private void show(Place next) {
    place.set(Optional.of(next));
    canGoBack.set(!before.isEmpty());
    canGoForward.set(!after.isEmpty());
  }
}
