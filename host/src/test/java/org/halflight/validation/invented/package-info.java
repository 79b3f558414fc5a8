/**
 * Invented shutters before invented rigs, made without any class of the program: numbers in, lines
 * of a session or numbers out, written from docs/protocol.md and docs/file-formats.md. What judges
 * the method must not share its mistakes.
 */
package org.halflight.validation.invented;
