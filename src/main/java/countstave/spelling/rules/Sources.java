package countstave.spelling.rules;

/** Where rules come from, named once. */
final class Sources {

    static final String MUSICXML = "MusicXML 4.0 (W3C Community Group report)";
    static final String PRACTICE = "common practice, no source";
    static final String GOULD = "Elaine Gould, Behind Bars (2011), from memory";
    static final String READ = "Gardner Read, Music Notation (2nd ed., 1979), from memory";

    private Sources() {
    }
}
