/**
 * What a person does with rig and record, step by step: the workflows that window and terminal
 * share. Each is a small state machine that gives prompts and takes answers; no class here knows
 * Swing or a terminal.
 */
package org.halflight.workflow;
