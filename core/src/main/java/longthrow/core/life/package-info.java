/**
 * What lets go first, and at what speed: masses, loads through two turns, strength, fatigue, bolts, bearings, valve train, wheels, starting.
 * <p>The question is {@link longthrow.core.life.Life}: limits as rungs, each by what it {@link longthrow.core.life.Asked asks} of the build. The formulas know no build.
 * <p>Start with them at {@link longthrow.core.life.RodMass} and {@link longthrow.core.life.Loads}: what moves and the forces it makes ({@link longthrow.core.life.DeadCentre} is the worst pull as a formula). Then, by part:
 * {@link longthrow.core.life.Column} and {@link longthrow.core.life.MeanStress} for the rod, {@link longthrow.core.life.BoltedJoint} and
 * {@link longthrow.core.life.Tightening} for its bolts, {@link longthrow.core.life.PistonPin} and {@link longthrow.core.life.CrankPin},
 * {@link longthrow.core.life.FilmOrbit} for the oil between rod and crankpin, {@link longthrow.core.life.ValveTrain} and
 * {@link longthrow.core.life.SpringStress}, {@link longthrow.core.life.RotatingDisk} and {@link longthrow.core.life.FlywheelFit}, and
 * {@link longthrow.core.life.Starting}.
 * <p>Sums that are one closed formula take and give expressions (see {@code core.formula}) and so carry doubt; sweeps over the crank angle
 * are plain numbers, cheap enough to repeat for samples. Coherent SI throughout; angles [rad] after firing top dead centre; forces along the
 * cylinder are positive towards the head, across it towards the side where the crank pin stands at +90 degrees.
 * <p>A formula here says what load a stated shape and material would bear. It knows nothing of cracks, dents and castings that are not what
 * they should be, and replaces no part maker's rating.
 * <p>Not here: what metals bear (see {@code engine.Alloy}, {@code BoltGrade}, {@code SpringWire}), the trade's limits (see {@code engine.Rule}), and where the shake goes (see {@code shake}).
 */
@NullMarked
package longthrow.core.life;

import org.jspecify.annotations.NullMarked;
