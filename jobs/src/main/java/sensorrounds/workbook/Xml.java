package sensorrounds.workbook;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * One part of a workbook as elements, by local name: the transitional and the strict form differ in their namespaces only.
 * Document types are refused, as the standard asks (ECMA-376 part 2, 8.1.4), and with them entities of every kind.
 */
final class Xml implements Closeable {
    private static final XMLInputFactory FACTORY = factory();

    private final InputStream in;
    private final XMLStreamReader xml;

    Xml(InputStream in) throws IOException {
        this.in = in;
        try {
            this.xml = FACTORY.createXMLStreamReader(in);
        } catch (XMLStreamException e) {
            in.close();
            throw problem(e);
        }
    }

    private static XMLInputFactory factory() {
        // The one of the JDK, whatever else lies on the class path.
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        return factory;
    }

    /** Moves to the next start or end of an element. @return false after the last */
    boolean next() throws IOException {
        while (hasNext()) {
            int event = advance();
            if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
                return true;
            }
        }
        return false;
    }

    boolean starts(String element) {
        return xml.isStartElement() && xml.getLocalName().equals(element);
    }

    boolean ends(String element) {
        return xml.isEndElement() && xml.getLocalName().equals(element);
    }

    /** @return the attribute, or null */
    String attribute(String name) {
        return xml.getAttributeValue(null, name);
    }

    /** The {@code id} that stands in a namespace of its own. */
    String reference() {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            String namespace = xml.getAttributeNamespace(i);
            if (xml.getAttributeLocalName(i).equals("id") && namespace != null && !namespace.isEmpty()) {
                return xml.getAttributeValue(i);
            }
        }
        return null;
    }

    /** Text of the element that starts here, and of those in it; moves to its end. */
    String text() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int depth = 1; depth > 0 && hasNext(); ) {
            int event = advance();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (xml.hasText() && event != XMLStreamConstants.COMMENT) {
                text.append(xml.getText());
            }
        }
        return text.toString();
    }

    private boolean hasNext() throws IOException {
        try {
            return xml.hasNext();
        } catch (XMLStreamException e) {
            throw problem(e);
        }
    }

    private int advance() throws IOException {
        int event;
        try {
            event = xml.next();
        } catch (XMLStreamException e) {
            throw problem(e);
        }
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw WorkbookProblem.damaged("a document type or an entity, which no workbook has");
        }
        return event;
    }

    /** The reader hides what its stream threw. */
    private static IOException problem(XMLStreamException e) {
        for (Throwable t = e;
                t != null;
                t = t.getCause() == null && t instanceof XMLStreamException x ? x.getNestedException() : t.getCause()) {
            if (t instanceof IOException io && !(t instanceof java.io.CharConversionException)) {
                return io instanceof WorkbookProblem ? io : WorkbookProblem.damaged(io.getMessage());
            }
        }
        return WorkbookProblem.damaged("not XML at line "
                + (e.getLocation() == null ? 0 : e.getLocation().getLineNumber()) + " of a part");
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
