package countstave.musicxml;

import countstave.score.Meter;
import jakarta.xml.bind.JAXBElement;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.Time;
import org.audiveris.proxymusic.YesNo;

/** Turns a {@code time} into a meter. */
final class MeterReader {

    private static final int LARGEST_SUM = 1000;
    private static final int SMALLEST_UNIT = 1024;

    private MeterReader() {
    }

    /** What the signature says, as it stands in the file: "3+2/8"; for messages. */
    static String shown(Time time) {
        StringBuilder text = new StringBuilder();
        for (JAXBElement<String> term : time.getTimeSignature()) {
            boolean beats = term.getName().getLocalPart().equals("beats");
            text.append(!beats ? "/" : text.isEmpty() ? "" : "+").append(term.getValue());
        }
        return Plain.shown(text.toString());
    }

    /** The meter, or null where its numbers cannot be read. An interchangeable signature counts as its first. */
    static Meter meter(Time time) {
        Meter.Symbol symbol = time.getPrintObject() == YesNo.NO ? Meter.Symbol.HIDDEN : symbol(time);
        if (time.getSenzaMisura() != null) {
            // MusicXML 4.0: the element is empty, or holds the sign that is to be printed, an X for one
            boolean cross = time.getSenzaMisura().strip().equalsIgnoreCase("X") && symbol != Meter.Symbol.HIDDEN;
            return new Meter(List.of(), cross ? Meter.Symbol.OPEN : symbol);
        }
        List<Meter.Component> components = new ArrayList<>();
        List<Integer> numbers = null;
        int sum = 0;
        for (JAXBElement<String> term : time.getTimeSignature()) {
            if (term.getName().getLocalPart().equals("beats")) {
                numbers = numbers(term.getValue());
            } else {
                int unit = number(term.getValue());
                if (numbers == null || numbers.isEmpty() || unit < 1 || unit > SMALLEST_UNIT) {
                    return null;
                }
                Meter.Component component = new Meter.Component(numbers, unit);
                sum += component.sum();
                components.add(component);
                numbers = null;
            }
        }
        return components.isEmpty() || numbers != null || sum > LARGEST_SUM ? null
                : new Meter(List.copyOf(components), symbol);
    }

    /** The terms of "3+2+2"; empty where one of them is no whole number above 0. */
    private static List<Integer> numbers(String text) {
        List<Integer> numbers = new ArrayList<>();
        for (String term : text == null ? new String[0] : text.split("\\+", -1)) {
            int number = number(term);
            if (number < 1 || numbers.size() > LARGEST_SUM) {
                return List.of();
            }
            numbers.add(number);
        }
        return List.copyOf(numbers);
    }

    private static int number(String text) {
        String digits = text == null ? "" : text.strip();
        return digits.matches("[0-9]{1,4}") ? Integer.parseInt(digits) : 0;
    }

    private static Meter.Symbol symbol(Time time) {
        return time.getSymbol() == null ? Meter.Symbol.NORMAL : Meter.Symbol.valueOf(time.getSymbol().name());
    }
}
