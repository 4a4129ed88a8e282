package countstave.score;

import java.util.List;

/**
 * Movements of a part: one begins where the numbers of the bars start anew, at 1 (or at 0, with a pickup) after a higher
 * number. Second endings that take up the numbers of the first, and bars that are split, begin none.
 */
public final class Movements {

    private static final int NO_NUMERAL = -1;

    private Movements() {
    }

    /**
     * The movement of each bar, from 1.
     *
     * @param numbers printed numbers of all bars
     * @return all 0 where there is one movement only
     */
    public static int[] of(List<String> numbers) {
        int[] movements = new int[numbers.size()];
        int movement = 1;
        int last = NO_NUMERAL;
        for (int i = 0; i < movements.length; i++) {
            int numeral = numeral(numbers.get(i));
            if (numeral != NO_NUMERAL) {
                if (numeral <= 1 && numeral < last && goesOn(numbers, i, numeral)) {
                    movement++;
                }
                last = numeral;
            }
            movements[i] = movement;
        }
        return movement == 1 ? new int[movements.length] : movements;
    }

    /** As {@link BarName#called}, as far as the bars that are known by then tell. */
    public static String called(List<String> numbers, int index) {
        return new BarName(index, numbers.get(index), false, of(numbers)[index]).called();
    }

    /** Whether the next numeral follows this one: a 0 inside of a movement stands for a part of a bar. */
    private static boolean goesOn(List<String> numbers, int from, int numeral) {
        for (int i = from + 1; i < numbers.size(); i++) {
            int next = numeral(numbers.get(i));
            if (next != NO_NUMERAL) {
                return next == numeral || next == numeral + 1;
            }
        }
        return false;
    }

    private static int numeral(String number) {
        return number.matches("[0-9]{1,9}") ? Integer.parseInt(number) : NO_NUMERAL;
    }
}
