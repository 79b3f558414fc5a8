/**
 * The firmware that this program brings, and how it gets onto a board: images, the protocol of the
 * board's bootloader, and the plan of an upload. Pure: bytes in, bytes out.
 */
package org.halflight.upload;
