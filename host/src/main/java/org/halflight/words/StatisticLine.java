package org.halflight.words;

/**
 * One statistic as a person reads it: a number and a sentence.
 *
 * @param name what it is
 * @param number with its unit; a dash where it is not known
 * @param firings how many firings there are and how many it wants at least
 * @param sentence what it means, or why it is not known
 */
public record StatisticLine(String name, String number, String firings, String sentence) {}
