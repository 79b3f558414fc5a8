package org.halflight.verdict;

import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stored.StoredWords;

/**
 * Something about the curtains that is beyond what good practice allows.
 *
 * @param kind what it is
 * @param size how much, in the unit of its kind
 * @param speed where it was seen, if at one speed only
 */
public record CurtainSign(Kind kind, double size, Optional<MarkedSpeed> speed) {
  /** What can stand out. */
  public enum Kind {
    /** The end gets no light while another place does, at this speed; size: share of firings. */
    CAPPED_AT_END,
    /** The start gets no light while another place does; size: share of firings. */
    CAPPED_AT_START,
    /** Evenly darker towards the end: the second curtain gains on the first; size: stops. */
    WEDGE_END_DARKER,
    /** Evenly brighter towards the end: the second curtain falls behind; size: stops. */
    WEDGE_END_BRIGHTER,
    /** Start and centre agree, the end is darker: the first curtain slows down; size: stops. */
    FIRST_DRAGS,
    /** Start and centre agree, the end is brighter: the second curtain slows down; size: stops. */
    SECOND_DRAGS,
    /** Centre and end agree, the start differs: a curtain starts badly; size: stops. */
    START_DIFFERS,
    /** All slit speeds too long by the same time: the second curtain lets go late; size: s. */
    LATCH_LATE,
    /** All slit speeds too short by the same time: the slit is set too narrow; size: s. */
    LATCH_EARLY,
    /** The first curtain takes longer than the camera's own figure; size: share. */
    FIRST_SLOW,
    /** The first curtain takes less time than that; size: share. */
    FIRST_QUICK,
    /** The second curtain takes longer than the camera's own figure; size: share. */
    SECOND_SLOW,
    /** The second curtain takes less time than that; size: share. */
    SECOND_QUICK,
    /** All slit speeds too long in the same ratio, and no figure of the travel; size: share. */
    BOTH_SLOW,
    /** All slit speeds too short in the same ratio, likewise; size: share. */
    BOTH_QUICK,
    /** Light at the end after the second curtain came home; size: stops. */
    SECOND_BOUNCES,
    /** Darkness at the end after the first curtain came home; size: s. */
    FIRST_BOUNCES,
    /** The first curtain was slower after a rest; size: share. */
    SLOW_AFTER_REST,
    /** The whole frame is open for too short a time, or never, at the flash speed; size: s. */
    NO_WINDOW,
    /** The flash contact closes before the whole frame is open; size: s too early. */
    CONTACT_EARLY,
    /** The flash contact closes too late for a flash; size: s too late. */
    CONTACT_LATE;

    /** As files store them. */
    public static final StoredWords<Kind> WORDS =
        StoredWords.of(
            Kind.class,
            kind ->
                switch (kind) {
                  case CAPPED_AT_END -> "capped-at-end";
                  case CAPPED_AT_START -> "capped-at-start";
                  case WEDGE_END_DARKER -> "wedge-end-darker";
                  case WEDGE_END_BRIGHTER -> "wedge-end-brighter";
                  case FIRST_DRAGS -> "first-drags";
                  case SECOND_DRAGS -> "second-drags";
                  case START_DIFFERS -> "start-differs";
                  case LATCH_LATE -> "latch-late";
                  case LATCH_EARLY -> "latch-early";
                  case FIRST_SLOW -> "first-slow";
                  case FIRST_QUICK -> "first-quick";
                  case SECOND_SLOW -> "second-slow";
                  case SECOND_QUICK -> "second-quick";
                  case BOTH_SLOW -> "both-slow";
                  case BOTH_QUICK -> "both-quick";
                  case SECOND_BOUNCES -> "second-bounces";
                  case FIRST_BOUNCES -> "first-bounces";
                  case SLOW_AFTER_REST -> "slow-after-rest";
                  case NO_WINDOW -> "no-window";
                  case CONTACT_EARLY -> "contact-early";
                  case CONTACT_LATE -> "contact-late";
                });
  }
}
