package org.framewright.ui;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import javafx.util.Subscription;
import org.framewright.job.Elsewhere;
import org.framewright.job.OnSet;
import org.framewright.job.SetupCodes;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.studio.SetFollower;
import org.framewright.ui.board.BoardScreen;
import org.framewright.ui.copies.CardWatch;
import org.framewright.ui.copies.CopiesScreen;
import org.framewright.ui.day.DayScreen;
import org.framewright.ui.frames.FramesScreen;
import org.framewright.ui.handoff.HandOffScreen;
import org.framewright.ui.lists.ListScreen;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.renaming.RenamesScreen;
import org.framewright.ui.scan.ListCodes;
import org.framewright.ui.scan.ScanModel;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.session.Notices;
import org.framewright.ui.settings.Troubles;
import org.framewright.ui.settings.WorkingHours;
import org.framewright.ui.share.ShareModel;

/** A job that is open: its session, its pages, and all that follows it. Goes as a whole. */
final class OpenJob implements AutoCloseable {
  private static final Duration OTHER_STATIONS = Duration.ofSeconds(2);
  private static final Duration CARDS = Duration.ofSeconds(4);

  private final Desk desk;
  private final JobSession session;
  private final FramePictures pictures;
  private final BoardScreen board;
  private final FramesScreen frames;
  private final RenamesScreen names;
  private final CopiesScreen copies;
  private final HandOffScreen handOff;
  private final DayScreen day;
  private final CardWatch cards;
  private final ListScreen lists;
  private final ClientDisplay client;
  private final ShareModel sharing;
  private final Screen closer;
  private final ListCodes codes;
  private AutoCloseable otherStations = () -> {};
  private AutoCloseable otherCards = () -> {};
  private AutoCloseable studio = () -> {};
  private Subscription telling = Subscription.EMPTY;
  private Subscription hearing = Subscription.EMPTY;
  private Subscription reading = Subscription.EMPTY;
  private Optional<Notices> notices = Optional.empty();

  /** Made away from the interface, which no window shows yet. */
  OpenJob(
      Desk desk,
      JobSession session,
      FramePictures pictures,
      BoardScreen board,
      FramesScreen frames,
      RenamesScreen names,
      CopiesScreen copies,
      HandOffScreen handOff,
      DayScreen day,
      CardWatch cards,
      ListScreen lists,
      ClientDisplay client,
      ShareModel sharing) {
    this.desk = desk;
    this.session = session;
    this.pictures = pictures;
    this.board = board;
    this.frames = frames;
    this.names = names;
    this.copies = copies;
    this.handOff = handOff;
    this.day = day;
    this.cards = cards;
    this.lists = lists;
    this.client = client;
    this.sharing = sharing;
    this.closer = frames.closer();
    this.codes =
        new ListCodes(list -> SetupCodes.of(session.job(), list), desk.tasks(), desk::trouble);
  }

  JobSession session() {
    return session;
  }

  BoardScreen board() {
    return board;
  }

  List<Screen> pages() {
    return List.of(board, frames, closer, names, copies, handOff, day, lists);
  }

  /** The card that was put in and is offered. */
  CardWatch cards() {
    return cards;
  }

  /** Asks about the card that is offered, if one is. */
  void takeCard() {
    var card = cards.offered().get();
    cards.putAway();
    card.ifPresent(one -> copies.take(one.folder()));
  }

  /** What a scan acts on: the list as the board runs it. */
  ScanModel.Target scans() {
    return new ScanModel.Target() {
      @Override
      public ShotList list() {
        return session.view().get().list();
      }

      @Override
      public ListCodes codes() {
        return codes;
      }

      @Override
      public Optional<String> onSet() {
        return session.view().get().state().onSet().map(OnSet::setup);
      }

      @Override
      public void putOnSet(String code) {
        board.model().putOnSet(code);
      }

      @Override
      public void change(Setup setup) {
        board.model().change(setup);
      }
    };
  }

  Optional<Notices> notices() {
    return notices;
  }

  /** The client's screen. */
  ClientDisplay client() {
    return client;
  }

  /** Its page for phones and tablets. */
  ShareModel sharing() {
    return sharing;
  }

  /** Listens to other stations and to what is so with the folder. */
  Notices follow(Background.Again again, Troubles troubles) {
    otherStations = again.every(OTHER_STATIONS, session::refresh);
    otherCards = again.every(CARDS, cards::look);
    reading = session.view().subscribe(now -> codes.of(now.list(), now.state().slates().keys()));
    hearing = session.elsewhere().subscribe((_, now) -> now.ifPresent(this::sayElsewhere));
    var following =
        new Notices(
            session.job().folder(),
            desk.texts(),
            session.view(),
            session.failures(),
            failure -> {
              var problem = troubles.explain(failure).problem();
              return new Notices.Notice(
                  desk.texts().sentence(problem), desk.texts().remedy(problem));
            });
    notices = Optional.of(following);
    return following;
  }

  /** Keeps the job and the studio's store alike, where this computer goes by one. */
  void joinStudio(Path settings) {
    var live = session.live();
    var hours = WorkingHours.kept(desk.preferences(), live.job().zone()).value();
    var follower =
        SetFollower.begin(settings, live, hours, desk.clock(), new StudioNews(desk, session));
    studio = follower;
    telling = session.view().subscribe(_ -> follower.changed());
  }

  /** Begins what looks at all that there is, once the page of the list is there. */
  void lookAtAll() {
    names.begin();
    session.watch();
  }

  private void sayElsewhere(Elsewhere did) {
    var texts = desk.texts();
    var who = did.called().orElseGet(() -> texts.get("elsewhere.other"));
    desk.say(
        did.tick()
            .map(
                tick ->
                    texts.get(
                        "elsewhere.tick",
                        who,
                        tick.setup(),
                        texts.get("state." + tick.state().word())))
            .orElseGet(() -> texts.get("elsewhere.list", who)));
  }

  /** All but the pages, which the shell disposes. */
  @Override
  public void close() {
    client.close();
    sharing.close();
    cards.close();
    try {
      otherStations.close();
      otherCards.close();
      studio.close();
    } catch (Exception e) {
      desk.trouble(e);
    }
    hearing.unsubscribe();
    reading.unsubscribe();
    telling.unsubscribe();
    codes.close();
    notices.ifPresent(Notices::dispose);
    notices = Optional.empty();
    session.close();
    pictures.close();
  }
}
