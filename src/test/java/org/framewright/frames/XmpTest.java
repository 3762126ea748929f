package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMetaFactory;
import com.adobe.internal.xmp.options.SerializeOptions;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** XMP specification, part 1 (ISO 16684-1): a property is an attribute or an element. */
class XmpTest {

  @ParameterizedTest
  @CsvSource({"0,0", "1,1", "5,5", "5.0,5", "3.00,3", "-1,-1", "-1.0,-1", "' 4 ',4"})
  void readsTheRatingAsAttributeAndAsElement(String text, int rating) throws IOException {
    assertThat(rating(attribute(text))).isEqualTo(OptionalInt.of(rating));
    assertThat(rating(element(text))).isEqualTo(OptionalInt.of(rating));
  }

  @ParameterizedTest
  @ValueSource(strings = {"6", "-2", "many", "NaN", "", "1e99"})
  void refusesARatingThatIsNone(String text) {
    assertThatThrownBy(() -> rating(attribute(text)))
        .isInstanceOf(Malformed.class)
        .hasMessageContaining("rating");
  }

  @Test
  void noRatingIsNoRating() throws IOException {
    assertThat(rating(packet("", "<dc:format>image/jpeg</dc:format>"))).isEmpty();
  }

  @Test
  void theRatingOfSomethingInsideIsNotTheFramesOwn() throws IOException {
    var inside = "<dc:relation rdf:parseType='Resource'><xmp:Rating>4</xmp:Rating></dc:relation>";
    assertThat(rating(packet("", inside))).isEmpty();
  }

  /** The packets of the reference library, in its canonical and its compact form. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void readsWhatTheReferenceLibraryWrites(boolean compact) throws XMPException, IOException {
    for (int stars = -1; stars <= 5; stars++) {
      var meta = XMPMetaFactory.create();
      meta.setPropertyInteger(XMPConst.NS_XMP, "Rating", stars);
      meta.setLocalizedText(XMPConst.NS_DC, "title", "", "x-default", "<Rating>&");
      var how = new SerializeOptions();
      if (compact) {
        how.setUseCompactFormat(true);
      } else {
        how.setUseCanonicalFormat(true);
      }
      assertThat(rating(XMPMetaFactory.serializeToString(meta, how)))
          .isEqualTo(OptionalInt.of(stars));
    }
  }

  @Test
  void readsAPacketWithCharacterDataSections() throws IOException {
    assertThat(rating(packet("xmp:Rating='2'", "<dc:format><![CDATA[<&>]]></dc:format>")))
        .isEqualTo(OptionalInt.of(2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16", "UTF-16LE"})
  void readsAPacketThatBeginsWithAByteOrderMark(String encoding) throws IOException {
    // Java's UTF-16 writes the mark itself.
    var mark = encoding.equals("UTF-16") ? "" : "\uFEFF";
    var bytes = (mark + element("3")).getBytes(Charset.forName(encoding));
    assertThat(Xmp.read(Bytes.of(bytes)).rating()).isEqualTo(OptionalInt.of(3));
  }

  @Test
  void aCutPacketIsNotWhole() {
    var whole = element("3").strip();
    for (int length = 0; length < whole.length(); length++) {
      var cut = whole.substring(0, length);
      assertThatThrownBy(() -> rating(cut)).as(cut).isInstanceOf(Malformed.class);
    }
  }

  @Test
  void whatComesAfterThePacketDoesNotMatter() throws IOException {
    assertThat(rating(element("3") + "<?xpacket end='w'?>\0\0\0")).isEqualTo(OptionalInt.of(3));
  }

  @Test
  void noEntityIsResolved(@TempDir Path folder) throws IOException {
    var secret = Files.writeString(folder.resolve("secret"), "5");
    var hostile =
        "<!DOCTYPE x [<!ENTITY e SYSTEM '%s'>]>".formatted(secret.toUri())
            + packet("", "<xmp:Rating>&e;</xmp:Rating>");
    assertThatThrownBy(() -> rating(hostile)).isInstanceOf(Malformed.class);
  }

  @Test
  void aMountainOfEntitiesIsRefused() {
    var hostile = new StringBuilder("<!DOCTYPE x [<!ENTITY a0 'aaaaaaaaaa'>");
    for (int i = 1; i < 12; i++) {
      hostile.append("<!ENTITY a%d '%s'>".formatted(i, "&a%d;".formatted(i - 1).repeat(10)));
    }
    hostile.append("]>").append(packet("", "<xmp:Rating>&a11;</xmp:Rating>"));
    assertThatThrownBy(() -> rating(hostile.toString())).isInstanceOf(Malformed.class);
  }

  @Test
  void readsTheTextOfARatingWhateverStandsAroundIt() throws IOException {
    assertThat(rating(element("<b>4</b>"))).hasValue(4);
    assertThat(rating(element("<!-- stars --><![CDATA[3]]>"))).hasValue(3);
    assertThat(rating(element("1<b/>.<b><i/></b>0"))).hasValue(1);
  }

  @Test
  void theFirstRatingCounts() throws IOException {
    assertThat(rating(packet("xmp:Rating='2'", "<xmp:Rating>5</xmp:Rating>"))).hasValue(2);
    assertThat(rating(packet("", "<xmp:Rating>2</xmp:Rating><xmp:Rating>5</xmp:Rating>")))
        .hasValue(2);
  }

  @Test
  void aDescriptionOutsideOfTheRdfSaysNothing() throws IOException {
    var inside = attribute("2");
    var description =
        "<rdf:Description xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'"
            + " xmlns:xmp='http://ns.adobe.com/xap/1.0/' xmp:Rating='5'/>";
    assertThat(rating(inside.replace("</x:xmpmeta>", description + "</x:xmpmeta>"))).hasValue(2);
    var without = packet("", "");
    assertThat(rating(without.replace("</x:xmpmeta>", "<a>" + description + "</a></x:xmpmeta>")))
        .isEmpty();
    assertThat(rating(without.replace("<rdf:RDF", "<a>" + description + "</a><rdf:RDF"))).isEmpty();
  }

  @Test
  void readsPacketsOfElementsInsideEachOtherUpToSixtyFour() throws IOException {
    // The packet has three elements around those of its description, and the rating is a fourth.
    assertThat(rating(packet("", "<a>".repeat(61) + "</a>".repeat(61)))).isEmpty();
    assertThatThrownBy(() -> rating(packet("", "<a>".repeat(62) + "</a>".repeat(62))))
        .isInstanceOf(Malformed.class)
        .hasMessage("its XMP is nested too deeply");
    assertThat(rating(element("<a>".repeat(63) + "4" + "</a>".repeat(63)))).hasValue(4);
    assertThatThrownBy(() -> rating(element("<a>".repeat(64) + "4" + "</a>".repeat(64))))
        .isInstanceOf(Malformed.class)
        .hasMessage("its XMP is nested too deeply");
  }

  @Test
  void readsAPacketOfFourMebibytesAndNoLargerOne() throws IOException {
    var packet = attribute("4").strip();
    var largest = packet + " ".repeat((4 << 20) - packet.length());
    assertThat(rating(largest)).hasValue(4);
    assertThatThrownBy(() -> rating(largest + " "))
        .isInstanceOf(Malformed.class)
        .hasMessage("it is larger than a sidecar can sensibly be");
  }

  /** Microsoft, "Photo Metadata Policies"; the namespace with a slash is in real files. */
  @ParameterizedTest
  @CsvSource({
    "1,1", "12,1", "13,2", "25,2", "37,2", "38,3", "50,3", "63,4", "75,4", "88,5", "99,5"
  })
  void readsARatingThatIsAShareOfAHundred(String text, int rating) throws IOException {
    for (var namespace :
        new String[] {"http://ns.microsoft.com/photo/1.0", "http://ns.microsoft.com/photo/1.0/"}) {
      var declared = " xmlns:MicrosoftPhoto='" + namespace + "'";
      var asAttribute = read(packet(declared + " MicrosoftPhoto:Rating='" + text + "'", ""));
      assertThat(asAttribute.share()).hasValue(rating);
      assertThat(asAttribute.rating()).isEmpty();
      var element = "<MicrosoftPhoto:Rating>" + text + "</MicrosoftPhoto:Rating>";
      assertThat(read(packet(declared, element)).share()).hasValue(rating);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "100", "-1", "many", ""})
  void aShareThatIsNoneIsNoRating(String text) throws IOException {
    var declared = " xmlns:m='http://ns.microsoft.com/photo/1.0' m:Rating='" + text + "'";
    assertThat(read(packet(declared, "")).share()).isEmpty();
  }

  @Test
  void readsTheLabelAsAText() throws IOException {
    assertThat(read(packet("xmp:Label='À revoir'", "")).label()).contains("À revoir");
    assertThat(read(packet("", "<xmp:Label> Second </xmp:Label>")).label()).contains("Second");
    assertThat(read(packet("xmp:Label=' '", "")).label()).isEmpty();
    assertThat(read(packet("xmp:Label='" + "x".repeat(201) + "'", "")).label()).isEmpty();
  }

  @Test
  void readsAPacketOfManySettings() throws IOException {
    var settings =
        IntStream.range(0, 2000)
            .mapToObj(i -> "dc:setting" + i + "='" + i + "'")
            .collect(Collectors.joining(" "));
    assertThat(rating(packet(settings + " xmp:Rating='4'", ""))).hasValue(4);
  }

  @Test
  void bytesThatXmlDoesNotAllowDoNotMatterBeforeThePacket() throws IOException {
    var before = "<?xpacket begin='\u001A' id='W5M0MpCehiHzreSzNTczkc9d'?>\n<?other?>\n";
    assertThat(rating(before + element("3"))).hasValue(3);
  }

  private static OptionalInt rating(String packet) throws IOException {
    return read(packet).rating();
  }

  private static Xmp read(String packet) throws IOException {
    return Xmp.read(Bytes.of(packet.getBytes(StandardCharsets.UTF_8)));
  }

  private static String attribute(String rating) {
    return packet("xmp:Rating=\"" + rating + "\"", "");
  }

  private static String element(String rating) {
    return packet("", "<xmp:Rating>" + rating + "</xmp:Rating>");
  }

  private static String packet(String attributes, String elements) {
    return """
    <x:xmpmeta xmlns:x="adobe:ns:meta/">
     <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
      <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
        xmlns:xmp="http://ns.adobe.com/xap/1.0/" %s>%s</rdf:Description>
     </rdf:RDF>
    </x:xmpmeta>
    """
        .formatted(attributes, elements);
  }
}
