package countstave.spelling.rules;

import countstave.score.NoteValue;
import countstave.time.Duration;

/**
 * Notes as MusicXML, element by element, for files that contradict themselves.
 *
 * <p>Notes are separated by {@code ;}. Each begins with its value as in other rhythms ({@code 8}, {@code 8.},
 * {@code r8}, {@code g8}; {@code -} for none) and its {@code duration} in divisions ({@code -} for none). Then, in any
 * order: {@code D5} pitch, {@code D#5}, {@code Db5}; {@code v2} voice; {@code s2} staff; {@code 3:2} time-modification;
 * {@code b<}, {@code b-}, {@code b>} the eighth beam begins, goes on, ends, {@code b2<} the 16th beam; {@code ~} a tie
 * begins, {@code ^} a tie ends; {@code T<}, {@code T<3:2}, {@code T>} a tuplet bracket begins (with its number shown) or
 * ends, {@code U<}, {@code U>} one inside it; {@code roll} a tremolo sign. {@code back 4} and {@code on 4} move the
 * cursor.
 */
final class NoteXml {

    private final StringBuilder ties = new StringBuilder();
    private final StringBuilder tied = new StringBuilder();
    private final StringBuilder beams = new StringBuilder();
    private final StringBuilder notations = new StringBuilder();
    private String pitch = "<pitch><step>C</step><octave>5</octave></pitch>";
    private String voice = "1";
    private String staff = "";
    private String ratio = "";

    private NoteXml() {
    }

    static String notes(String text) {
        StringBuilder xml = new StringBuilder();
        for (String note : text.split(";")) {
            String[] tokens = note.strip().split("\\s+");
            xml.append(switch (tokens[0]) {
                case "back" -> "<backup><duration>" + tokens[1] + "</duration></backup>\n";
                case "on" -> "<forward><duration>" + tokens[1] + "</duration></forward>\n";
                default -> new NoteXml().note(tokens);
            });
        }
        return xml.toString();
    }

    private String note(String[] tokens) {
        for (int i = 2; i < tokens.length; i++) {
            option(tokens[i]);
        }
        boolean rest = tokens[0].startsWith("r");
        StringBuilder xml = new StringBuilder("<note>").append(tokens[0].startsWith("g") ? "<grace/>" : "");
        xml.append(rest ? "<rest/>" : pitch);
        if (!tokens[1].equals("-")) {
            xml.append("<duration>").append(tokens[1]).append("</duration>");
        }
        xml.append(ties).append("<voice>").append(voice).append("</voice>");
        if (!tokens[0].equals("-")) {
            long number = Long.parseLong(tokens[0].replaceAll("[^0-9]", ""));
            xml.append("<type>").append(NoteValue.ofLength(Duration.of(1, number)).xmlName()).append("</type>")
                    .append("<dot/>".repeat((int) tokens[0].chars().filter(c -> c == '.').count()));
        }
        xml.append(ratio).append(staff).append(beams);
        String signs = tied.toString() + notations;
        return xml.append(signs.isEmpty() ? "" : "<notations>" + signs + "</notations>").append("</note>\n").toString();
    }

    private void option(String token) {
        char first = token.charAt(0);
        if (token.equals("~") || token.equals("^")) {
            String type = token.equals("~") ? "start" : "stop";
            ties.append("<tie type=\"").append(type).append("\"/>");
            tied.append("<tied type=\"").append(type).append("\"/>");
        } else if (token.equals("roll")) {
            notations.append("<ornaments><tremolo type=\"single\">2</tremolo></ornaments>");
        } else if (first == 'b') {
            String kind = token.endsWith("<") ? "begin" : token.endsWith(">") ? "end" : "continue";
            String level = token.length() == 3 ? token.substring(1, 2) : "1";
            beams.append("<beam number=\"").append(level).append("\">").append(kind).append("</beam>");
        } else if (first == 'T' || first == 'U') {
            bracket(first == 'T' ? 1 : 2, token);
        } else if (first == 'v') {
            voice = token.substring(1);
        } else if (first == 's') {
            staff = "<staff>" + token.substring(1) + "</staff>";
        } else if (Character.isDigit(first)) {
            ratio = "<time-modification>" + terms(token, "<actual-notes>%s</actual-notes><normal-notes>%s</normal-notes>")
                    + "</time-modification>";
        } else {
            String alter = token.contains("#") ? "<alter>1</alter>" : token.contains("b") ? "<alter>-1</alter>" : "";
            pitch = "<pitch><step>" + first + "</step>" + alter + "<octave>" + token.substring(token.length() - 1)
                    + "</octave></pitch>";
        }
    }

    private void bracket(int number, String token) {
        String head = "<tuplet number=\"" + number + "\" type=\"";
        if (token.charAt(1) == '>') {
            notations.append(head).append("stop\"/>");
        } else if (token.length() == 2) {
            notations.append(head).append("start\"/>");
        } else {
            notations.append(head).append("start\">").append(terms(token.substring(2),
                    "<tuplet-actual><tuplet-number>%s</tuplet-number></tuplet-actual>"
                            + "<tuplet-normal><tuplet-number>%s</tuplet-number></tuplet-normal>")).append("</tuplet>");
        }
    }

    private static String terms(String ratio, String form) {
        return String.format(form, (Object[]) ratio.split(":"));
    }
}
