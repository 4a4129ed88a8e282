package countstave.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Spoils scores: by bytes (turned, cut out, doubled, cut short), by what XML is made of (elements dropped, doubled, moved,
 * renamed, nested; attributes and texts exchanged) and by what a score says (durations, divisions, ratios, meters set to
 * values that no program should write). The same seed gives the same mutants.
 */
final class Mutator {

    /** Numbers that have hurt programs before; common practice, no source. */
    private static final List<String> NUMBERS = List.of("0", "-1", "1", "2", "3", "7", "11", "13", "255", "32767", "65536",
            "2147483647", "2147483648", "-2147483648", "9223372036854775807", "9223372036854775808", "1e9", "1e999", "1E-400",
            "0.5", "0.333333333333", "-0", "NaN", "INF", "1/3", "007", " 4 ", "+4", "4.0", "", "٣", "99999999999999999999999");

    private static final List<String> TEXTS = List.of("", "\u001b[2J", "&#27;[31m", "&#x9b;31m", "\u202e", "\u0000",
            "&bomb;", "<![CDATA[<note>]]>", "<!-- -- -->", "<?countstave?>", "<?countstave", "]]>", "\uFFFF", "\uD800",
            "x".repeat(3_000), "\r\n\t", "quarter", "eighth", "1024th", "maxima", "start", "stop", "continue", "let-ring",
            "1+2+3", "3+", "+", "common", "senza", "percussion", "none", "../../etc/x", "%s%n", "${x}");

    private static final List<String> ELEMENTS = List.of("<backup><duration>1</duration></backup>",
            "<forward><duration>7</duration></forward>", "<chord/>", "<grace/>", "<rest/>", "<rest measure=\"yes\"/>",
            "<dot/>", "<cue/>", "<tie type=\"stop\"/>", "<voice>9</voice>", "<staff>3</staff>",
            "<attributes><divisions>5</divisions></attributes>",
            "<attributes><time><beats>5</beats><beat-type>8</beat-type></time></attributes>",
            "<attributes><time><senza-misura/></time></attributes>",
            "<attributes><measure-style><measure-repeat type=\"start\">2</measure-repeat></measure-style></attributes>",
            "<attributes><measure-style><multiple-rest>3</multiple-rest></measure-style></attributes>",
            "<time-modification><actual-notes>11</actual-notes><normal-notes>8</normal-notes></time-modification>",
            "<notations><tuplet type=\"start\" number=\"1\"/></notations>",
            "<notations><tuplet type=\"stop\" number=\"1\"/></notations>",
            "<notations><tied type=\"start\"/></notations>",
            "<direction><sound tempo=\"0\"/></direction>", "<sound tempo=\"100000\"/>",
            "<lyric number=\"1\"><?countstave?><text>1</text></lyric>",
            "<barline location=\"right\"><repeat direction=\"forward\"/></barline>");

    private static final Pattern TAG = Pattern.compile("<(/?)([A-Za-z][\\w-]*)([^<>]*?)(/?)>");
    private static final Pattern TEXT = Pattern.compile(">([^<>]+)<");
    private static final Pattern VALUE = Pattern.compile("=(['\"])([^'\"<>]*)\\1");
    private static final Pattern TIMES = Pattern.compile("<(duration|divisions|actual-notes|normal-notes|beats|beat-type|staff"
            + "|voice|octave|display-octave|alter|staves|staff-lines|line|fifths|type|normal-type|per-minute|beat-unit)>([^<]*)<");

    private final Random random;

    Mutator(long seed) {
        random = new Random(seed);
    }

    /** One to six changes to one of the {@code seeds}; now and then packed as a compressed score, that spoiled too. */
    byte[] next(List<byte[]> seeds) {
        String text = new String(seeds.get(random.nextInt(seeds.size())), StandardCharsets.UTF_8);
        int changes = 1 + random.nextInt(6);
        for (int i = 0; i < changes; i++) {
            text = change(text, seeds);
        }
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(12) == 0) {
            bytes = packed(bytes);
            if (random.nextInt(2) == 0) {
                bytes = spoil(bytes);
            }
        } else if (random.nextInt(10) == 0) {
            bytes = spoil(bytes);
        }
        return bytes;
    }

    private String change(String text, List<byte[]> seeds) {
        return switch (random.nextInt(14)) {
            case 0, 1, 2 -> replace(text, TIMES, 2, pick(NUMBERS));
            case 3 -> replace(text, TEXT, 1, pick(TEXTS));
            case 4 -> replace(text, VALUE, 2, random.nextBoolean() ? pick(NUMBERS) : pick(TEXTS));
            case 5 -> random.nextInt(4) > 0 ? text : replace(text, TAG, random.nextInt(2) * 2, name(text));
            case 6 -> renamed(text);
            case 7 -> insert(text, pick(ELEMENTS));
            case 8 -> insert(text, element(text));
            case 9 -> without(text, element(text));
            case 10 -> insert(without(text, element(text)), element(text));
            case 11 -> insert(text, element(new String(seeds.get(random.nextInt(seeds.size())), StandardCharsets.UTF_8)));
            case 12 -> nested(text);
            default -> random.nextInt(4) > 0 ? text : text.substring(0, random.nextInt(text.length() + 1))
                    + (random.nextInt(3) == 0 ? "" : text.substring(random.nextInt(text.length() + 1)));
        };
    }

    private <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    /** Replaces one group of one match. */
    private String replace(String text, Pattern pattern, int group, String by) {
        Matcher matcher = find(text, pattern);
        return matcher == null ? text : text.substring(0, matcher.start(group)) + by + text.substring(matcher.end(group));
    }

    /** The first match behind a place chosen at random. */
    private Matcher find(String text, Pattern pattern) {
        Matcher matcher = pattern.matcher(text);
        return text.isEmpty() || !matcher.find(random.nextInt(text.length())) ? null : matcher;
    }

    private String name(String text) {
        Matcher matcher = find(text, TAG);
        return matcher == null ? "note" : matcher.group(2);
    }

    /** An element with all that is in it, or nothing. */
    private String element(String text) {
        Matcher open = find(text, TAG);
        if (open == null || !open.group(1).isEmpty()) {
            return "";
        }
        if (!open.group(4).isEmpty()) {
            return open.group();
        }
        String close = "</" + open.group(2) + ">";
        int end = text.indexOf(close, open.end());
        return end < 0 || end - open.start() > 20_000 ? "" : text.substring(open.start(), end + close.length());
    }

    /** Another name for an element, at both ends. */
    private String renamed(String text) {
        String element = element(text);
        String name = name(text);
        if (element.isEmpty()) {
            return text;
        }
        String other = element.replaceFirst("^<[\\w-]+", "<" + name).replaceFirst("</[\\w-]+>$", "</" + name + ">");
        return text.replace(element, other);
    }

    private static String without(String text, String part) {
        int at = part.isEmpty() ? -1 : text.indexOf(part);
        return at < 0 ? text : text.substring(0, at) + text.substring(at + part.length());
    }

    private String insert(String text, String part) {
        Matcher tag = find(text, TAG);
        int at = tag == null ? 0 : tag.end();
        return text.length() > 400_000 ? text : text.substring(0, at) + part + text.substring(at);
    }

    private String nested(String text) {
        String name = name(text);
        int depth = 1 + random.nextInt(300);
        return insert(text, ("<" + name + ">").repeat(depth) + ("</" + name + ">").repeat(depth));
    }

    private byte[] spoil(byte[] given) {
        byte[] bytes = given.clone();
        for (int i = 0; i <= random.nextInt(8) && bytes.length > 0; i++) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return random.nextInt(4) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length + 1)) : bytes;
    }

    private byte[] packed(byte[] score) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String root = random.nextInt(5) == 0 ? "../up.musicxml" : "score.musicxml";
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            if (random.nextInt(6) > 0) {
                zip.putNextEntry(new ZipEntry("META-INF/container.xml"));
                String container = "<container><rootfiles><rootfile full-path=\"" + root + "\"/></rootfiles></container>";
                zip.write((random.nextInt(5) == 0 ? change(container, List.of(score)) : container)
                        .getBytes(StandardCharsets.UTF_8));
            }
            zip.putNextEntry(new ZipEntry(root));
            zip.write(score);
        } catch (IOException e) {
            throw new IllegalStateException("a stream in memory cannot fail", e);
        }
        return out.toByteArray();
    }
}
