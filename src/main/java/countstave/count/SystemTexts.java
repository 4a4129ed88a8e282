package countstave.count;

/**
 * What a counting system says of itself.
 *
 * @param name by which it is chosen
 * @param title its name in a heading
 * @param about what it is, or empty
 * @param limits what it cannot say, or empty
 * @param language code of the language of its words, or empty
 * @param and the chosen word for "and", or empty for the one of the system's file
 */
record SystemTexts(String name, String title, String about, String limits, String language, String and) {
}
