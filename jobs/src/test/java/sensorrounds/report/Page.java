package sensorrounds.report;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathExpressionException;
import javax.xml.xpath.XPathFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The written report, read back with the XML parser of the platform: it refuses what is not well-formed. */
final class Page {
    private final String text;
    private final Document document;

    private Page(String text, Document document) {
        this.text = text;
        this.document = document;
    }

    static Page of(ReportData data) {
        StringBuilder out = new StringBuilder();
        try {
            HtmlReport.write(data, out);
            DocumentBuilder parser = DocumentBuilderFactory.newInstance().newDocumentBuilder();
            return new Page(out.toString(), parser.parse(new InputSource(new StringReader(out.toString()))));
        } catch (IOException | SAXException | ParserConfigurationException e) {
            throw new AssertionError("the report is not well-formed: " + e.getMessage(), e);
        }
    }

    String text() {
        return text;
    }

    List<Element> all(String xpath) {
        try {
            NodeList nodes =
                    (NodeList) XPathFactory.newInstance().newXPath().evaluate(xpath, document, XPathConstants.NODESET);
            List<Element> elements = new ArrayList<>();
            for (int i = 0; i < nodes.getLength(); i++) {
                elements.add((Element) nodes.item(i));
            }
            return elements;
        } catch (XPathExpressionException e) {
            throw new IllegalArgumentException(xpath, e);
        }
    }

    Element section(String id) {
        return all("//section[@id='" + id + "']").get(0);
    }

    /** Text of a section as a reader sees it, thin and fixed spaces read as spaces. */
    String words(String sectionId) {
        return plain(section(sectionId).getTextContent());
    }

    static String plain(String text) {
        return text.replace('\u202f', ' ').replace('\u00a0', ' ');
    }
}
