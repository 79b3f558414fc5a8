/**
 * What is tried beside the marked speeds: wind and release timing, B and T, the self-timer, the
 * flash contact, bounce, light that leaks, the stops. Read from firings and light readings; pure.
 */
package org.halflight.extratest;
