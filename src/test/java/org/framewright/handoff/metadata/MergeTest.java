package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.handoff.metadata.Samples.packet;
import static org.framewright.handoff.metadata.Samples.utf8;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What becomes of a sidecar that is there; RDF/XML and XMP by ISO 16684-1. */
class MergeTest {
  private static final String DC = "xmlns:dc=\"http://purl.org/dc/elements/1.1/\"";
  private static final String PS = "xmlns:photoshop=\"http://ns.adobe.com/photoshop/1.0/\"";

  private static Sidecar.Outcome.Made made(String sidecar, Block block, boolean overwrite) {
    return (Sidecar.Outcome.Made) Sidecar.merged(utf8(sidecar), block, overwrite);
  }

  private static String merged(String sidecar) {
    return text(made(sidecar, Samples.block(), false));
  }

  private static String text(Sidecar.Outcome.Made made) {
    return new String(made.bytes(), StandardCharsets.UTF_8);
  }

  private static String described(String inside) {
    return packet(
        "<rdf:Description rdf:about=\"\" " + DC + " " + PS + ">" + inside + "</rdf:Description>");
  }

  private static String creator(String name) {
    return "<dc:creator><rdf:Seq><rdf:li>" + name + "</rdf:li></rdf:Seq></dc:creator>";
  }

  private static String refused(byte[] sidecar) {
    return ((Sidecar.Outcome.Left) Sidecar.merged(sidecar, Samples.block(), false)).why().english();
  }

  @Test
  void whatSomebodyWroteStaysAndIsTold() {
    var made = made(described(creator("Somebody Else")), Samples.block(), false);
    assertThat(text(made)).contains("Somebody Else").doesNotContain("Inès Vander</rdf:li>");
    assertThat(made.kept()).containsExactly("Creator");
  }

  @Test
  void oursIsWrittenOverItWhereThatIsAskedFor() {
    var made = made(described(creator("Somebody Else")), Samples.block(), true);
    assertThat(text(made)).doesNotContain("Somebody Else").contains("Inès Vander</rdf:li>");
    assertThat(made.kept()).isEmpty();
  }

  @Test
  void whatIsTheJobsOwnIsAlwaysOurs() {
    var before =
        described(
            "<photoshop:TransmissionReference>old"
                + " job</photoshop:TransmissionReference><photoshop:Instructions>old"
                + " wish</photoshop:Instructions><dc:title><rdf:Alt><rdf:li"
                + " xml:lang=\"x-default\">old</rdf:li></rdf:Alt></dc:title><plus:ImageSupplierImageID"
                + " xmlns:plus=\"http://ns.useplus.org/ldf/xmp/1.0/\">7"
                + "</plus:ImageSupplierImageID>");
    var made = made(before, Samples.block(), false);
    assertThat(text(made))
        .doesNotContain("old")
        .doesNotContain(">7<")
        .contains(">2026-11-23_KVO_look-book<")
        .contains("Please send it back as KVO_001_F_0001_v01. Keep the shadow");
    assertThat(made.kept()).isEmpty();
  }

  @Test
  void aValueThatIsThereAndEmptyIsAGap() {
    var made = made(described(creator(" ") + "<photoshop:Credit/>"), Samples.block(), false);
    assertThat(text(made)).contains("Inès Vander</rdf:li>").contains("Inès Vander / Nova");
    assertThat(made.kept()).isEmpty();
    assertThat(text(made).split("<dc:creator>", -1)).hasSize(2);
  }

  @Test
  void theSameValueOfSomebodyElseIsNoNews() {
    assertThat(made(described(creator("Inès Vander")), Samples.block(), false).kept()).isEmpty();
  }

  @Test
  void otherLanguagesStayBesideOurs() {
    var before =
        described(
            "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">old</rdf:li>"
                + "<rdf:li xml:lang=\"fr\">manteau</rdf:li></rdf:Alt></dc:title>");
    assertThat(merged(before))
        .contains(
            "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">KVO_001_F_0001</rdf:li>"
                + "<rdf:li xml:lang=\"fr\">manteau</rdf:li></rdf:Alt></dc:title>");
  }

  @Test
  void aValueInAnotherLanguageOnlyIsSomebodysToo() {
    var made =
        made(
            described(
                "<dc:rights><rdf:Alt><rdf:li xml:lang=\"fr\">tous"
                    + " droits</rdf:li></rdf:Alt></dc:rights>"),
            Samples.block(),
            false);
    assertThat(text(made)).contains("tous droits").doesNotContain("Söhne").doesNotContain("Marked");
    assertThat(made.kept()).containsExactly("Copyright Notice");
  }

  @Test
  void aStructIsTakenWholeOrNotAtAll() {
    var before =
        described(
            "<i:CreatorContactInfo xmlns:i=\"http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/\""
                + " i:CiTelWork=\"+49 30 555\"/>");
    assertThat(merged(before)).contains("+49 30 555").doesNotContain("ines@nova.example");
    assertThat(text(made(before, Samples.block(), true)))
        .doesNotContain("+49 30 555")
        .contains("<i:CiEmailWork>ines@nova.example</i:CiEmailWork>");
  }

  @Test
  void valuesWrittenAsAttributesCountToo() {
    var before =
        packet(
            "<rdf:Description rdf:about=\"\" "
                + PS
                + " photoshop:Credit=\"Agency\" photoshop:Instructions=\"old\"/>");
    assertThat(merged(before))
        .contains("photoshop:Credit=\"Agency\"")
        .doesNotContain("old")
        .doesNotContain("<photoshop:Credit>");
  }

  // exiv2 0.27 refuses a packet with two prefixes for one namespace.
  @Test
  void thePrefixesOfTheFileAreUsed() {
    var before =
        packet(
            "<rdf:Description rdf:about=\"\" xmlns:core=\"http://purl.org/dc/elements/1.1/\""
                + " core:format=\"image/jpeg\"/>");
    assertThat(merged(before)).contains("<core:title>").doesNotContain("dc:");
  }

  @Test
  void aPrefixThatMeansSomethingElseInTheFileIsNotTaken() {
    var before =
        packet("<rdf:Description rdf:about=\"\" xmlns:dc=\"urn:diving\" dc:depth=\"12 m\"/>");
    assertThat(merged(before))
        .contains("dc:depth=\"12 m\"")
        .contains("xmlns:dc1=\"http://purl.org/dc/elements/1.1/\"")
        .contains("<dc1:title>");
  }

  @Test
  void whatTheFileCallsItselfIsKept() {
    var before = packet("<rdf:Description rdf:about=\"uuid:7\" xmlns:e=\"urn:e\" e:a=\"1\"/>");
    assertThat(merged(before)).contains("<rdf:Description rdf:about=\"uuid:7\" xmlns:Iptc");
  }

  @Test
  void nodesThatAreNamedAreOtherThings() {
    var before =
        packet(
            "<rdf:Description rdf:nodeID=\"a\" " + PS + " photoshop:Credit=\"of another thing\"/>");
    assertThat(merged(before)).contains("of another thing").contains("Inès Vander / Nova");
  }

  // From the note: a real sidecar was refused by an XMP library for its CDATA.
  @Test
  void sectionsOfPlainTextStayAsTheyAre() {
    var before = described("<e:a xmlns:e=\"urn:e\"><![CDATA[5 < 7 & so]]></e:a>");
    assertThat(merged(before)).contains("<![CDATA[5 < 7 & so]]>");
  }

  // From the note: a real sidecar has 0x1A there.
  @Test
  void aControlByteAroundThePacketIsNoHindrance() {
    var before = described("<photoshop:Credit>Agency</photoshop:Credit>");
    var merged = merged(before.replace("<?xpacket end=\"w\"?>", "\u001A"));
    assertThat(merged).contains("Agency").endsWith("<?xpacket end=\"w\"?>");
    assertThat(merged).doesNotContain("\u001A");
  }

  @Test
  void whatStandsAroundThePacketStays() {
    var before = "<!-- by a raw converter -->\n" + described("") + "<!-- and so on -->";
    assertThat(merged(before))
        .startsWith("<!-- by a raw converter -->\n<?xpacket")
        .endsWith("<!-- and so on -->");
  }

  @Test
  void aPacketMayBeBareAndInOtherPrefixes() {
    var bare = "<r:RDF xmlns:r=\"" + Samples.RDF + "\"><r:Description r:about=\"\"/></r:RDF>";
    assertThat(merged(bare)).startsWith("<r:RDF").contains("<r:Alt>").doesNotContain("rdf:");
  }

  @Test
  void utf16IsReadAndComesOutAsUtf8() {
    var bytes = described(creator("Ōe")).getBytes(StandardCharsets.UTF_16);
    var made = (Sidecar.Outcome.Made) Sidecar.merged(bytes, Samples.block(), false);
    assertThat(text(made)).contains("Ōe").startsWith("<?xpacket begin=\"\uFEFF\"");
  }

  @Test
  void aSidecarThatSaysAllOfItStaysAsItIs() {
    var once = made(described(creator("Somebody Else")), Samples.block(), false);
    var twice = (Sidecar.Outcome.Made) Sidecar.merged(once.bytes(), Samples.block(), false);
    assertThat(twice.isSame(once.bytes())).isTrue();
  }

  @Test
  void manyAttributesAreNoAttack() {
    // Raw converters write a few hundred; this runtime's own limit is 200.
    var many = new StringBuilder("<rdf:Description rdf:about=\"\" xmlns:e=\"urn:e\"");
    for (int i = 0; i < 600; i++) {
      many.append(" e:a").append(i).append("=\"1\"");
    }
    assertThat(merged(packet(many + "/>"))).contains("e:a599=\"1\"");
  }

  @Test
  void aSidecarThatIsHostileOrBrokenIsLeftWithTheReason() {
    assertThat(refused(utf8("<e/>".repeat(2_000_000)))).contains("larger than any");
    // This runtime refuses 2000 by itself.
    assertThat(refused(utf8(described("<a>".repeat(62) + "</a>".repeat(62)))))
        .contains("no XML that can be read");
    assertThat(refused(utf8(described("<a>".repeat(2000) + "</a>".repeat(2000)))))
        .contains("no XML that can be read");
    var bomb = "<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>";
    assertThat(refused(utf8(bomb + described("<dc:title>&b;</dc:title>"))))
        .contains("document type");
    assertThat(refused(utf8(described("<dc:title>&b;</dc:title>")))).contains("no XML");
    assertThat(refused(utf8(described("<dc:title>a\u0001b</dc:title>")))).contains("no XML");
    var whole = described(creator("Somebody"));
    assertThat(refused(utf8(whole.substring(0, whole.indexOf("</rdf:RDF>")))))
        .contains("cut short");
    assertThat(refused(utf8("not a sidecar"))).contains("no XMP");
    assertThat(refused(new byte[] {'<', 'x', ':', 'x', 'm', 'p', (byte) 0xFF}))
        .contains("encoding");
    assertThat(refused(utf8("<?xml version=\"1.0\" encoding=\"latin1\"?>" + whole)))
        .contains("encoding");
    assertThat(refused(utf8(whole + whole))).contains("no XML");
    assertThat(refused(new byte[0])).contains("no XMP");
  }

  @Test
  void aNewSidecarSaysWhatThePictureSaysOfTheSameThings() throws Exception {
    var inside =
        Packet.read(utf8(described(creator("Somebody Else") + "<e:a xmlns:e=\"urn:e\">1</e:a>")));
    var known = new String(Merge.known(inside, Samples.block()).bytes(), StandardCharsets.UTF_8);
    assertThat(known).contains("Somebody Else").doesNotContain("urn:e");
  }

  @Test
  void whatThePictureSaysKeepsItsNamesWhereverTheyAreDeclared() throws Exception {
    var inside =
        "<rdf:RDF xmlns:rdf=\""
            + Samples.RDF
            + "\"><rdf:Description rdf:about=\"\"><creator"
            + " xmlns=\"http://purl.org/dc/elements/1.1/\"><rdf:Seq><rdf:li>Somebody"
            + " Else</rdf:li></rdf:Seq></creator></rdf:Description></rdf:RDF>";
    var known = Merge.known(Packet.read(utf8(inside)), Samples.block());
    var made = Merge.into(Packet.read(known.bytes()), Samples.block(), false);
    assertThat(made.kept()).containsExactly(Property.CREATOR);
  }

  @Test
  void textThatNoXmlCanHoldIsMadeSomethingThatItCan() {
    var block = Block.of(Samples.studio(Map.of()), Samples.select(Map.of(), "a\u0007b\uD800c"));
    assertThat(text(made(packet(""), block, false))).contains("a b\uFFFDc; front");
  }

  @Test
  void valuesAreInTheOrderOfTheStandard() {
    assertThat(Samples.block().values().keySet()).hasSize(Property.values().length);
    assertThat(List.copyOf(Samples.block().values().keySet())).startsWith(Property.CREATOR);
  }
}
