package org.halflight.job;

/** What an entry of the work log tells. */
public enum WorkKind {
  FOUND,
  CLEANED,
  LUBRICATED,
  ADJUSTED,
  REPLACED,
  NOTE
}
