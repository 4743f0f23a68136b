/**
 * Text to and from {@link longthrow.core.build.Build}, the catalogue of parts and the catalogue of donors.
 * <p>Start at {@link longthrow.buildfile.BuildFile}: {@code read}, {@code write}, {@code edit}. {@link
 * longthrow.buildfile.CatalogueFile} reads parts and machine operations, CSV or YAML; {@link
 * longthrow.buildfile.DonorFile} reads versions of donor engines. {@link longthrow.buildfile.BlankSheet}, {@link
 * longthrow.buildfile.BuildSchema} and {@link longthrow.buildfile.Glossary} are generated from the registry of terms.
 * <p>A file is a small part of YAML 1.2: key-value lines, lists, comments. Every value stays the text that was typed, so that
 * 1.10 mm stays 1.10 mm; anchors, aliases, tags, merge keys and several documents are refused. Whatever the bytes, nothing is
 * thrown: what is wrong comes back as {@link longthrow.buildfile.Fault}s, all at once, each with its place and its cure.
 * <p>Stateless, safe for any thread. Not here: files, and any judgement of whether a figure is believable.
 */
@NullMarked
package longthrow.buildfile;

import org.jspecify.annotations.NullMarked;
