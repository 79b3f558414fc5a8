/**
 * The campaign: damage, deaths and mishaps in numbers, against what was really fired. It is written
 * from docs/protocol.md and docs/file-formats.md and makes lines, files and firings with code of
 * its own, so that a mistake in the program is not made twice. Its short form runs with the tests;
 * the long form is {@link org.halflight.campaign.Campaign}, and its figures stand in
 * docs/reliability.md. All figures are simulated.
 */
package org.halflight.campaign;
