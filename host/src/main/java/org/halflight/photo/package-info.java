/** Photographs: what their files say, the inbox in which they arrive, and where they are kept. */
package org.halflight.photo;
