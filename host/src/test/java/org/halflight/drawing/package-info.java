/**
 * The drawings of the starter rig. Each is made from its parts and where their legs go, and the
 * same list says what is joined to what, so that a drawing cannot show another circuit than the
 * tests compare.
 */
package org.halflight.drawing;
