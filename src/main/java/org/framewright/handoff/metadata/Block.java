package org.framewright.handoff.metadata;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoField;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.handoff.metadata.Studio.Detail;
import org.framewright.shotlist.Setup;

/** What is to be said of a select: a value for each property that anything is known of. */
public final class Block {
  private static final DateTimeFormatter TAKEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);
  private static final String BY_CAMERA =
      "http://cv.iptc.org/newscodes/digitalsourcetype/digitalCapture";

  private static final String SLATE = "slate";

  private final SequencedMap<Property, Value> values = new LinkedHashMap<>();
  private final boolean gtinWrong;

  private Block(Studio studio, SelectData data) {
    studio(studio, data);
    job(data);
    var columns = data.line().map(ListColumns::new);
    columns.ifPresent(this::list);
    studio.get(Detail.STUDIO).ifPresent(name -> put(Property.SUPPLIER, supplier(name)));
    plain(Property.SUPPLIER_ID, data.name());
    if (data.byCamera()) {
      plain(Property.SOURCE_TYPE, BY_CAMERA);
    }
    plain(Property.NAME_BEFORE, data.nameBefore());
    data.rating().ifPresent(rating -> plain(Property.RATING, "" + rating));
    gtinWrong =
        columns.filter(it -> it.gtinAsWritten().isPresent() && it.gtin().isEmpty()).isPresent();
  }

  private Block(SequencedMap<Property, Value> values, boolean gtinWrong) {
    this.values.putAll(values);
    this.gtinWrong = gtinWrong;
  }

  /** What is to be said of a select, but for what its file says of itself. */
  public static Block of(Studio studio, SelectData data) {
    return new Block(studio, data);
  }

  /**
   * A rating and nothing else.
   *
   * @param rating from 0, not rated, to 5
   */
  public static Block ofRating(int rating) {
    var block = new Block(new LinkedHashMap<>(), false);
    block.plain(Property.RATING, "" + rating);
    return block;
  }

  /**
   * The same with what tells this picture from all others.
   *
   * @param sha256 the checksum of the frame that it is a copy of
   */
  public Block of(String sha256) {
    var all = new Block(values, gtinWrong);
    // A second hand-off of the same frame is to say the same.
    var name = UUID.nameUUIDFromBytes(sha256.getBytes(StandardCharsets.US_ASCII));
    all.plain(Property.GUID, name.toString());
    return all;
  }

  SequencedMap<Property, Value> values() {
    return Collections.unmodifiableSequencedMap(values);
  }

  /** Whether the list has a product number that is none. */
  public boolean gtinWrong() {
    return gtinWrong;
  }

  /** A property as plain text, as the older IIM says it; several values one by one. */
  List<String> words(Property property) {
    return switch (values.get(property)) {
      case null -> List.of();
      case Value.Plain(String text) -> List.of(text);
      case Value.Languages(String text) -> List.of(text);
      case Value.Items items ->
          items.items().stream()
              .filter(Value.Plain.class::isInstance)
              .map(item -> ((Value.Plain) item).text())
              .toList();
      case Value.Struct _ -> List.of();
    };
  }

  @Override
  public String toString() {
    return values.toString();
  }

  private void studio(Studio studio, SelectData data) {
    studio
        .get(Detail.PHOTOGRAPHER)
        .ifPresent(name -> put(Property.CREATOR, Value.texts(true, List.of(name))));
    plain(Property.POSITION, studio.get(Detail.POSITION));
    var contact = new LinkedHashMap<Name, Value>();
    contact(contact, "CiEmailWork", studio.get(Detail.MAIL));
    contact(contact, "CiTelWork", studio.get(Detail.PHONE));
    contact(contact, "CiUrlWork", studio.get(Detail.WEBSITE));
    if (!contact.isEmpty()) {
      put(Property.CONTACT, new Value.Struct(contact));
    }
    studio
        .get(Detail.COPYRIGHT)
        .map(notice -> Notice.filled(notice, data.fields()))
        .filter(notice -> !notice.isEmpty())
        .ifPresent(
            notice -> {
              put(Property.RIGHTS, new Value.Languages(notice));
              plain(Property.MARKED, "True");
            });
    plain(Property.CREDIT, studio.get(Detail.CREDIT));
    plain(Property.SOURCE, studio.get(Detail.SOURCE).or(() -> studio.get(Detail.STUDIO)));
    studio
        .get(Detail.OWNER)
        .ifPresent(
            name ->
                put(
                    Property.OWNER,
                    structs(true, field(Namespace.PLUS, "CopyrightOwnerName", name))));
    studio.get(Detail.TERMS).ifPresent(terms -> put(Property.TERMS, new Value.Languages(terms)));
    plain(Property.STATEMENT, studio.get(Detail.STATEMENT));
    plain(
        Property.DATA_MINING,
        studio.get(Detail.MINING).flatMap(DataMining::ofWord).map(DataMining::uri));
  }

  private static void contact(
      SequencedMap<Name, Value> contact, String local, Optional<String> text) {
    text.ifPresent(
        said -> contact.put(new Name(Namespace.IPTC_CORE, local), new Value.Plain(said)));
  }

  private void job(SelectData data) {
    var slate = data.slate() ? Optional.of(SLATE) : Optional.<String>empty();
    var garment = data.line().map(Setup::title).filter(title -> !title.isBlank());
    plain(Property.JOB_ID, data.job());
    put(
        Property.TITLE,
        new Value.Languages(data.name() + slate.map(" (%s)"::formatted).orElse("")));
    plain(
        Property.HEADLINE,
        data.jobTitle() + " " + data.setup() + slate.map(", %s"::formatted).orElse(""));
    var description =
        Stream.of(slate, garment, data.view())
            .flatMap(Optional::stream)
            .collect(Collectors.joining("; "));
    if (!description.isEmpty()) {
      put(Property.DESCRIPTION, new Value.Languages(description));
    }
    var keywords = new ArrayList<>(List.of(data.setup()));
    garment.ifPresent(keywords::add);
    data.view().ifPresent(keywords::add);
    slate.ifPresent(keywords::add);
    put(Property.KEYWORDS, Value.texts(false, keywords));
    var instructions =
        Stream.of(
                data.wantedBack().map(name -> "Please send it back as " + name + "."),
                data.line().flatMap(Setup::note))
            .flatMap(Optional::stream)
            .collect(Collectors.joining(" "));
    plain(Property.INSTRUCTIONS, Optional.of(instructions).filter(text -> !text.isEmpty()));
    plain(Property.DATE_CREATED, data.taken().map(Block::time));
    put(Property.EVENT, new Value.Languages(data.jobTitle()));
  }

  private static String time(SelectData.Taken taken) {
    int millis = taken.time().get(ChronoField.MILLI_OF_SECOND);
    return taken.time().format(TAKEN)
        + (millis == 0 ? "" : String.format(Locale.ROOT, ".%03d", millis))
        + taken
            .offset()
            .map(offset -> offset.getTotalSeconds() == 0 ? "Z" : offset.getId())
            .orElse("");
  }

  private void list(ListColumns columns) {
    var people = columns.people();
    if (!people.isEmpty()) {
      put(Property.PEOPLE, Value.texts(false, people));
    }
    plain(Property.RELEASE_STATUS, columns.releaseStatus());
    var ids = columns.releaseIds();
    if (!ids.isEmpty()) {
      put(Property.RELEASE_ID, Value.texts(false, ids));
    }
    var product = new LinkedHashMap<Name, Value>();
    columns
        .gtin()
        .ifPresent(gtin -> product.putAll(field(Namespace.IPTC_EXT, "ProductGTIN", gtin)));
    columns
        .colour()
        .ifPresent(
            colour ->
                product.put(
                    new Name(Namespace.IPTC_EXT, "ProductDescription"),
                    new Value.Languages(colour)));
    if (!product.isEmpty()) {
      var title = columns.setup().title();
      if (!title.isBlank()) {
        product.putFirst(new Name(Namespace.IPTC_EXT, "ProductName"), new Value.Languages(title));
      }
      put(Property.PRODUCT, structs(false, product));
    }
  }

  private static Value supplier(String name) {
    return structs(true, field(Namespace.PLUS, "ImageSupplierName", name));
  }

  private static SequencedMap<Name, Value> field(Namespace namespace, String local, String text) {
    var fields = new LinkedHashMap<Name, Value>();
    fields.put(new Name(namespace, local), new Value.Plain(text));
    return fields;
  }

  private static Value structs(boolean ordered, SequencedMap<Name, Value> fields) {
    return new Value.Items(ordered, List.of(new Value.Struct(fields)));
  }

  private void plain(Property property, String text) {
    put(property, new Value.Plain(text));
  }

  private void plain(Property property, Optional<String> text) {
    text.ifPresent(said -> plain(property, said));
  }

  private void put(Property property, Value value) {
    values.put(property, value);
  }
}
