/** The workshop in a browser: pages over the store, served to this machine alone. */
@NullMarked
package longthrow.workshop.web;

import org.jspecify.annotations.NullMarked;
