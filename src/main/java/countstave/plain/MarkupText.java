package countstave.plain;

/** Text as it stands in HTML and XML. What of it is shown at all is {@link SafeText}'s business. */
public final class MarkupText {

    private MarkupText() {
    }

    /** Between tags. */
    public static String text(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    /** In the quotation marks of an attribute, and between tags too. */
    public static String quoted(String text) {
        return text(text).replace("\"", "&quot;");
    }
}
