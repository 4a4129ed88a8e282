package countstave.plain;

import java.nio.charset.StandardCharsets;

/** Text as a URI may hold it. */
public final class UriText {

    /** What may stand in it besides letters and digits (RFC 3986, 2.3), and what stands between the steps of a path. */
    private static final String UNRESERVED = "-._~/";

    private UriText() {
    }

    /** A path, its steps divided by {@code /}: all else that a URI cannot hold percent-encoded, the very bytes of the text in UTF-8. */
    public static String ofPath(String path) {
        StringBuilder raw = new StringBuilder();
        for (byte b : path.getBytes(StandardCharsets.UTF_8)) {
            if (b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || UNRESERVED.indexOf(b) >= 0) {
                raw.append((char) b);
            } else {
                raw.append(String.format("%%%02X", b & 0xFF));
            }
        }
        return raw.toString();
    }
}
