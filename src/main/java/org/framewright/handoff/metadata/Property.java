package org.framewright.handoff.metadata;

import java.util.Optional;

/**
 * The properties that are written: IPTC Photo Metadata Standard 2025.1, with their paths in XMP and
 * the datasets of the older IIM that say the same.
 */
enum Property {
  CREATOR("Creator", Namespace.DC, "creator", new Dataset(80, 32)),
  POSITION("Creator’s Job Title", Namespace.PHOTOSHOP, "AuthorsPosition", new Dataset(85, 32)),
  CONTACT("Creator’s Contact Info", Namespace.IPTC_CORE, "CreatorContactInfo"),
  RIGHTS("Copyright Notice", Namespace.DC, "rights", new Dataset(116, 128)),
  MARKED("Marked", Namespace.RIGHTS, "Marked"),
  CREDIT("Credit Line", Namespace.PHOTOSHOP, "Credit", new Dataset(110, 32)),
  SOURCE("Source", Namespace.PHOTOSHOP, "Source", new Dataset(115, 32)),
  OWNER("Copyright Owner", Namespace.PLUS, "CopyrightOwner"),
  TERMS("Rights Usage Terms", Namespace.RIGHTS, "UsageTerms"),
  STATEMENT("Web Statement of Rights", Namespace.RIGHTS, "WebStatement"),
  DATA_MINING("Data Mining", Namespace.PLUS, "DataMining"),
  JOB_ID("Job Id", Namespace.PHOTOSHOP, "TransmissionReference", new Dataset(103, 32)),
  TITLE("Title", Namespace.DC, "title", new Dataset(5, 64)),
  HEADLINE("Headline", Namespace.PHOTOSHOP, "Headline", new Dataset(105, 256)),
  DESCRIPTION("Description", Namespace.DC, "description", new Dataset(120, 2000)),
  KEYWORDS("Keywords", Namespace.DC, "subject", new Dataset(25, 64)),
  INSTRUCTIONS("Instructions", Namespace.PHOTOSHOP, "Instructions", new Dataset(40, 256)),
  DATE_CREATED("Date Created", Namespace.PHOTOSHOP, "DateCreated", new Dataset(55, 8)),
  EVENT("Event Name", Namespace.IPTC_EXT, "Event"),
  PEOPLE("Person Shown", Namespace.IPTC_EXT, "PersonInImage"),
  RELEASE_STATUS("Model Release Status", Namespace.PLUS, "ModelReleaseStatus"),
  RELEASE_ID("Model Release Id", Namespace.PLUS, "ModelReleaseID"),
  PRODUCT("Product Shown", Namespace.IPTC_EXT, "ProductInImage"),
  SUPPLIER("Image Supplier", Namespace.PLUS, "ImageSupplier"),
  SUPPLIER_ID("Image Supplier Image ID", Namespace.PLUS, "ImageSupplierImageID"),
  SOURCE_TYPE("Digital Source Type", Namespace.IPTC_EXT, "DigitalSourceType"),
  GUID("Digital Image GUID", Namespace.IPTC_EXT, "DigImageGUID"),
  NAME_BEFORE("Preserved File Name", Namespace.MEDIA, "PreservedFileName"),
  RATING("Image Rating", Namespace.XMP, "Rating");

  /**
   * A dataset of record 2 of the IIM.
   *
   * @param bytes the most that it holds
   */
  record Dataset(int number, int bytes) {}

  private final String label;

  @SuppressWarnings("ImmutableEnumChecker") // A record of an enum and a text.
  private final Name path;

  @SuppressWarnings("ImmutableEnumChecker") // A record of numbers.
  private final Optional<Dataset> dataset;

  Property(String label, Namespace namespace, String local) {
    this(label, namespace, local, null);
  }

  Property(String label, Namespace namespace, String local, Dataset dataset) {
    this.label = label;
    this.path = new Name(namespace, local);
    this.dataset = Optional.ofNullable(dataset);
  }

  /** As the standard calls it. */
  String label() {
    return label;
  }

  Name path() {
    return path;
  }

  Optional<Dataset> dataset() {
    return dataset;
  }

  /** Whether it is the job's own business, whatever somebody else wrote. */
  boolean isAlwaysOurs() {
    return switch (this) {
      case JOB_ID, TITLE, INSTRUCTIONS, SUPPLIER_ID, RATING -> true;
      default -> false;
    };
  }
}
