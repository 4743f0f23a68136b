/**
 * The owner's data on the disk, so that nothing once acknowledged is lost: builds as the texts they were typed as, every
 * accepted edit a revision, files, imported catalogues, small settings, backups, and one archive in and out.
 *
 * <p>Start at {@link longthrow.workshop.store.Store}; {@link longthrow.workshop.store.DataFolder} says where it lives. What
 * cannot be done is a {@link longthrow.workshop.store.StoreFault}. Everything public here may be used by many threads at once.
 * What is acknowledged, that is: what a method returned from, is on the disk.
 *
 * <p>All SQL of the program is in this package, its tables under {@code resources/longthrow/workshop/store/schema}. Why it
 * is as it is: docs/decisions/0011-store.md.
 *
 * <p>Not here: what a build means, see {@code longthrow.buildfile}; to this package a build is a text.
 */
@NullMarked
package longthrow.workshop.store;

import org.jspecify.annotations.NullMarked;
