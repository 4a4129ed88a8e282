package org.audiveris.proxymusic;

import jakarta.xml.bind.JAXBElement;
import jakarta.xml.bind.annotation.XmlElementDecl;
import jakarta.xml.bind.annotation.XmlRegistry;

/**
 * The elements that are told apart by their name, as far as scores are read for them.
 *
 * <p>It stands for ProxyMusic's own {@code ObjectFactory}, whose methods lead to every class of MusicXML: the binding takes
 * one registry for a package, hence this place. Of most elements only the name is asked, so their contents are not bound.
 * The binding reads the declarations and calls none of them.
 */
@XmlRegistry
public interface ReadElements {

    @XmlElementDecl(name = "beat-type", scope = Time.class)
    JAXBElement<java.lang.String> timeBeatType(java.lang.String value);

    @XmlElementDecl(name = "beats", scope = Time.class)
    JAXBElement<java.lang.String> timeBeats(java.lang.String value);

    @XmlElementDecl(name = "accent", scope = Articulations.class)
    JAXBElement<Empty> articulationsAccent(Empty value);

    @XmlElementDecl(name = "breath-mark", scope = Articulations.class)
    JAXBElement<Empty> articulationsBreathMark(Empty value);

    @XmlElementDecl(name = "caesura", scope = Articulations.class)
    JAXBElement<Empty> articulationsCaesura(Empty value);

    @XmlElementDecl(name = "detached-legato", scope = Articulations.class)
    JAXBElement<Empty> articulationsDetachedLegato(Empty value);

    @XmlElementDecl(name = "doit", scope = Articulations.class)
    JAXBElement<Empty> articulationsDoit(Empty value);

    @XmlElementDecl(name = "falloff", scope = Articulations.class)
    JAXBElement<Empty> articulationsFalloff(Empty value);

    @XmlElementDecl(name = "other-articulation", scope = Articulations.class)
    JAXBElement<Empty> articulationsOtherArticulation(Empty value);

    @XmlElementDecl(name = "plop", scope = Articulations.class)
    JAXBElement<Empty> articulationsPlop(Empty value);

    @XmlElementDecl(name = "scoop", scope = Articulations.class)
    JAXBElement<Empty> articulationsScoop(Empty value);

    @XmlElementDecl(name = "soft-accent", scope = Articulations.class)
    JAXBElement<Empty> articulationsSoftAccent(Empty value);

    @XmlElementDecl(name = "spiccato", scope = Articulations.class)
    JAXBElement<Empty> articulationsSpiccato(Empty value);

    @XmlElementDecl(name = "staccatissimo", scope = Articulations.class)
    JAXBElement<Empty> articulationsStaccatissimo(Empty value);

    @XmlElementDecl(name = "staccato", scope = Articulations.class)
    JAXBElement<Empty> articulationsStaccato(Empty value);

    @XmlElementDecl(name = "stress", scope = Articulations.class)
    JAXBElement<Empty> articulationsStress(Empty value);

    @XmlElementDecl(name = "strong-accent", scope = Articulations.class)
    JAXBElement<Empty> articulationsStrongAccent(Empty value);

    @XmlElementDecl(name = "tenuto", scope = Articulations.class)
    JAXBElement<Empty> articulationsTenuto(Empty value);

    @XmlElementDecl(name = "unstress", scope = Articulations.class)
    JAXBElement<Empty> articulationsUnstress(Empty value);

    @XmlElementDecl(name = "f", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsF(Empty value);

    @XmlElementDecl(name = "ff", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFf(Empty value);

    @XmlElementDecl(name = "fff", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFff(Empty value);

    @XmlElementDecl(name = "ffff", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFfff(Empty value);

    @XmlElementDecl(name = "fffff", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFffff(Empty value);

    @XmlElementDecl(name = "ffffff", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFfffff(Empty value);

    @XmlElementDecl(name = "fp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFp(Empty value);

    @XmlElementDecl(name = "fz", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsFz(Empty value);

    @XmlElementDecl(name = "mf", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsMf(Empty value);

    @XmlElementDecl(name = "mp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsMp(Empty value);

    @XmlElementDecl(name = "n", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsN(Empty value);

    @XmlElementDecl(name = "other-dynamics", scope = Dynamics.class)
    JAXBElement<OtherText> dynamicsOtherDynamics(OtherText value);

    @XmlElementDecl(name = "p", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsP(Empty value);

    @XmlElementDecl(name = "pf", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPf(Empty value);

    @XmlElementDecl(name = "pp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPp(Empty value);

    @XmlElementDecl(name = "ppp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPpp(Empty value);

    @XmlElementDecl(name = "pppp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPppp(Empty value);

    @XmlElementDecl(name = "ppppp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPpppp(Empty value);

    @XmlElementDecl(name = "pppppp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsPppppp(Empty value);

    @XmlElementDecl(name = "rf", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsRf(Empty value);

    @XmlElementDecl(name = "rfz", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsRfz(Empty value);

    @XmlElementDecl(name = "sf", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSf(Empty value);

    @XmlElementDecl(name = "sffz", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSffz(Empty value);

    @XmlElementDecl(name = "sfp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSfp(Empty value);

    @XmlElementDecl(name = "sfpp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSfpp(Empty value);

    @XmlElementDecl(name = "sfz", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSfz(Empty value);

    @XmlElementDecl(name = "sfzp", scope = Dynamics.class)
    JAXBElement<Empty> dynamicsSfzp(Empty value);

    @XmlElementDecl(name = "accidental-mark", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsAccidentalMark(Empty value);

    @XmlElementDecl(name = "delayed-inverted-turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsDelayedInvertedTurn(Empty value);

    @XmlElementDecl(name = "delayed-turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsDelayedTurn(Empty value);

    @XmlElementDecl(name = "haydn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsHaydn(Empty value);

    @XmlElementDecl(name = "inverted-mordent", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsInvertedMordent(Empty value);

    @XmlElementDecl(name = "inverted-turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsInvertedTurn(Empty value);

    @XmlElementDecl(name = "inverted-vertical-turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsInvertedVerticalTurn(Empty value);

    @XmlElementDecl(name = "mordent", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsMordent(Empty value);

    @XmlElementDecl(name = "other-ornament", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsOtherOrnament(Empty value);

    @XmlElementDecl(name = "schleifer", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsSchleifer(Empty value);

    @XmlElementDecl(name = "shake", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsShake(Empty value);

    @XmlElementDecl(name = "tremolo", scope = Ornaments.class)
    JAXBElement<Tremolo> ornamentsTremolo(Tremolo value);

    @XmlElementDecl(name = "trill-mark", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsTrillMark(Empty value);

    @XmlElementDecl(name = "turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsTurn(Empty value);

    @XmlElementDecl(name = "vertical-turn", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsVerticalTurn(Empty value);

    @XmlElementDecl(name = "wavy-line", scope = Ornaments.class)
    JAXBElement<Empty> ornamentsWavyLine(Empty value);

    @XmlElementDecl(name = "arrow", scope = Technical.class)
    JAXBElement<Empty> technicalArrow(Empty value);

    @XmlElementDecl(name = "bend", scope = Technical.class)
    JAXBElement<Empty> technicalBend(Empty value);

    @XmlElementDecl(name = "brass-bend", scope = Technical.class)
    JAXBElement<Empty> technicalBrassBend(Empty value);

    @XmlElementDecl(name = "double-tongue", scope = Technical.class)
    JAXBElement<Empty> technicalDoubleTongue(Empty value);

    @XmlElementDecl(name = "down-bow", scope = Technical.class)
    JAXBElement<Empty> technicalDownBow(Empty value);

    @XmlElementDecl(name = "fingering", scope = Technical.class)
    JAXBElement<Empty> technicalFingering(Empty value);

    @XmlElementDecl(name = "fingernails", scope = Technical.class)
    JAXBElement<Empty> technicalFingernails(Empty value);

    @XmlElementDecl(name = "flip", scope = Technical.class)
    JAXBElement<Empty> technicalFlip(Empty value);

    @XmlElementDecl(name = "fret", scope = Technical.class)
    JAXBElement<Empty> technicalFret(Empty value);

    @XmlElementDecl(name = "golpe", scope = Technical.class)
    JAXBElement<Empty> technicalGolpe(Empty value);

    @XmlElementDecl(name = "half-muted", scope = Technical.class)
    JAXBElement<Empty> technicalHalfMuted(Empty value);

    @XmlElementDecl(name = "hammer-on", scope = Technical.class)
    JAXBElement<Empty> technicalHammerOn(Empty value);

    @XmlElementDecl(name = "handbell", scope = Technical.class)
    JAXBElement<Empty> technicalHandbell(Empty value);

    @XmlElementDecl(name = "harmon-mute", scope = Technical.class)
    JAXBElement<Empty> technicalHarmonMute(Empty value);

    @XmlElementDecl(name = "harmonic", scope = Technical.class)
    JAXBElement<Empty> technicalHarmonic(Empty value);

    @XmlElementDecl(name = "heel", scope = Technical.class)
    JAXBElement<Empty> technicalHeel(Empty value);

    @XmlElementDecl(name = "hole", scope = Technical.class)
    JAXBElement<Empty> technicalHole(Empty value);

    @XmlElementDecl(name = "open", scope = Technical.class)
    JAXBElement<Empty> technicalOpen(Empty value);

    @XmlElementDecl(name = "open-string", scope = Technical.class)
    JAXBElement<Empty> technicalOpenString(Empty value);

    @XmlElementDecl(name = "other-technical", scope = Technical.class)
    JAXBElement<Empty> technicalOtherTechnical(Empty value);

    @XmlElementDecl(name = "pluck", scope = Technical.class)
    JAXBElement<Empty> technicalPluck(Empty value);

    @XmlElementDecl(name = "pull-off", scope = Technical.class)
    JAXBElement<Empty> technicalPullOff(Empty value);

    @XmlElementDecl(name = "smear", scope = Technical.class)
    JAXBElement<Empty> technicalSmear(Empty value);

    @XmlElementDecl(name = "snap-pizzicato", scope = Technical.class)
    JAXBElement<Empty> technicalSnapPizzicato(Empty value);

    @XmlElementDecl(name = "stopped", scope = Technical.class)
    JAXBElement<Empty> technicalStopped(Empty value);

    @XmlElementDecl(name = "string", scope = Technical.class)
    JAXBElement<Empty> technicalString(Empty value);

    @XmlElementDecl(name = "tap", scope = Technical.class)
    JAXBElement<Empty> technicalTap(Empty value);

    @XmlElementDecl(name = "thumb-position", scope = Technical.class)
    JAXBElement<Empty> technicalThumbPosition(Empty value);

    @XmlElementDecl(name = "toe", scope = Technical.class)
    JAXBElement<Empty> technicalToe(Empty value);

    @XmlElementDecl(name = "triple-tongue", scope = Technical.class)
    JAXBElement<Empty> technicalTripleTongue(Empty value);

    @XmlElementDecl(name = "up-bow", scope = Technical.class)
    JAXBElement<Empty> technicalUpBow(Empty value);
}
