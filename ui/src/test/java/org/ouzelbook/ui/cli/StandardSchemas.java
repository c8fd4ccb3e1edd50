package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.util.Objects;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.SAXException;

/** The schema files in the folder {@code schemas}, whose README names their sources and licences. */
final class StandardSchemas {
    private StandardSchemas() {}

    /** {@return a schema; what it imports and does not lie beside it is taken for empty, and nothing is fetched} */
    static Schema of(String name) {
        try {
            DOMImplementationLS letters = (DOMImplementationLS)
                    DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
            SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
            factory.setResourceResolver((type, namespace, publicId, systemId, base) -> {
                LSInput input = letters.createLSInput();
                InputStream beside = StandardSchemas.class.getResourceAsStream("schemas/" + systemId);
                if (beside == null) {
                    input.setCharacterStream(new StringReader(
                            "<xs:schema xmlns:xs=\"http://www.w3.org/2001/XMLSchema\" targetNamespace=\"" + namespace
                                    + "\"/>"));
                } else {
                    input.setByteStream(beside);
                }
                input.setSystemId(systemId);
                return input;
            });
            return factory.newSchema(new StreamSource(
                    Objects.requireNonNull(StandardSchemas.class.getResourceAsStream("schemas/" + name))));
        } catch (ReflectiveOperationException | SAXException e) {
            throw new AssertionError(name, e);
        }
    }

    /**
     * Holds a text against a schema.
     *
     * @throws SAXException if it is not as the schema wants
     */
    static void validate(String name, String text) throws SAXException {
        try {
            of(name).newValidator().validate(new StreamSource(new StringReader(text)));
        } catch (IOException e) {
            throw new AssertionError(name, e);
        }
    }
}
