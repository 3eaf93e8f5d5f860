package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.audiveris.proxymusic.ScorePartwise;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.SAXException;

/**
 * The schema of MusicXML 4.0 of the W3C Music Notation Community Group, as the library that reads
 * our files back carries it. What it imports of XML and XLink is said here in short.
 */
final class PublishedSchema {
  private static final String XML =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/XML/1998/namespace">
        <xs:attribute name="lang" type="xs:language"/>
        <xs:attribute name="space" type="xs:token"/>
      </xs:schema>
      """;
  private static final String XLINK =
      """
      <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/1999/xlink">
        <xs:attribute name="actuate" type="xs:token"/>
        <xs:attribute name="href" type="xs:anyURI"/>
        <xs:attribute name="role" type="xs:token"/>
        <xs:attribute name="show" type="xs:token"/>
        <xs:attribute name="title" type="xs:token"/>
        <xs:attribute name="type" type="xs:token"/>
      </xs:schema>
      """;

  private static final Schema SCHEMA = read();

  private PublishedSchema() {}

  private static Schema read() {
    try {
      DOMImplementationLS inputs =
          (DOMImplementationLS)
              DOMImplementationRegistry.newInstance().getDOMImplementation("LS 3.0");
      SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
      factory.setResourceResolver(
          (type, namespace, publicId, systemId, base) -> {
            LSInput input = inputs.createLSInput();
            boolean xml = XMLConstants.XML_NS_URI.equals(namespace);
            input.setCharacterStream(new StringReader(xml ? XML : XLINK));
            input.setSystemId(systemId);
            return input;
          });
      URL url =
          Objects.requireNonNull(
              ScorePartwise.class.getResource("/META-INF/jaxb/xsd/musicxml.xsd"));
      try (InputStream in = url.openStream()) {
        return factory.newSchema(new StreamSource(in));
      }
    } catch (ReflectiveOperationException | SAXException | IOException e) {
      throw new AssertionError(e);
    }
  }

  /** Fails with the schema's own words if the document is not valid. */
  static void check(byte[] document) {
    String told = "";
    try {
      SCHEMA.newValidator().validate(new StreamSource(new ByteArrayInputStream(document)));
    } catch (SAXException e) {
      told = String.valueOf(e.getMessage());
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    assertThat(told).as(new String(document, StandardCharsets.UTF_8)).isEmpty();
  }
}
