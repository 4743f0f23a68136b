/**
 * What can be bought or machined: parts, donor engines and machine operations, each with its figures, its offer and who vouches for it.
 * <p>Start at {@link longthrow.core.catalogue.Catalogue}; a row is a {@link longthrow.core.catalogue.CataloguePart}, or an
 * {@link longthrow.core.catalogue.Operation} for machining.
 * <p>What a row does not say is unknown and stays unknown; a figure without a tolerance has no known doubt.
 * <p>Not here: reading catalogue files, see the module {@code buildfile}; what fits what, see {@code fit}.
 */
@NullMarked
package longthrow.core.catalogue;

import org.jspecify.annotations.NullMarked;
