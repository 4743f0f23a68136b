package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A preloaded bolt and what it clamps, as two springs: an outside pull stretches the bolt by its share and takes the rest off the clamp. Budynas and
 * Nisbett, Shigley's Mechanical Engineering Design, sections 8-4 to 8-11; from memory. Holds for a pull along the bolt; a cap that bends pries and adds to
 * it. Forces [N], stresses and strengths [Pa], stiffnesses [N/m].
 * @param bolt       stiffness of the bolt
 * @param members    stiffness of what it clamps
 * @param stressArea of its thread [m2]
 * @param preload    clamp before any load
 */
public record BoltedJoint(Expression bolt, Expression members, Expression stressArea, Expression preload) {
    /**
     * Half the angle of the cone of pressure under the head [rad]; Shigley section 8-5, after Osgood: 25 to 33 degrees.
     */
    private static final double CONE = Math.toRadians(30);

    /** The same as Shigley prints it, which its examples are worked with. */
    private static final double CONE_TANGENT = Math.round(Math.tan(CONE) * 1e4) / 1e4;

    /**
     * Stiffness of a bolt within its grip, shank and thread one behind the other.
     * @param plain    length of full shank in the grip [m]
     * @param threaded length of thread in the grip [m]
     */
    public static Expression boltStiffness(
            ScrewThread thread, Expression plain, Expression threaded, Expression modulus) {
        Expression shank = thread.shankArea();
        Expression root = thread.stressArea();
        return boltStiffness(shank, root, plain, threaded, modulus);
    }

    /** The same by areas [m2]. */
    public static Expression boltStiffness(
            Expression shankArea, Expression stressArea, Expression plain, Expression threaded, Expression modulus) {
        return shankArea
                .times(stressArea)
                .times(modulus)
                .dividedBy(shankArea.times(threaded).plus(stressArea.times(plain)));
    }

    /**
     * Stiffness of what is clamped when both sides are of one metal: two cones of 30 degrees from heads one and a half diameters wide. Shigley eq. (8-22).
     * @param diameter of the bolt [m]
     * @param grip     clamped length [m]
     */
    public static Expression memberStiffness(Expression modulus, Expression diameter, Expression grip) {
        Expression reach = grip.times(CONE_TANGENT);
        Expression ratio = reach.plus(diameter.times(0.5)).times(5).dividedBy(reach.plus(diameter.times(2.5)));
        return modulus.times(diameter)
                .times(CONE_TANGENT * Math.PI)
                .dividedBy(ratio.logarithm().times(2));
    }

    /** Share of an outside pull that the bolt feels. */
    public Expression share() {
        return bolt.dividedBy(bolt.plus(members));
    }

    /** Stress of the preload. */
    public Expression preloadStress() {
        return preload.dividedBy(stressArea);
    }

    /** Stress with an outside pull on this bolt. */
    public Expression stress(Expression pull) {
        return share().times(pull).plus(preload).dividedBy(stressArea);
    }

    /** How many times the pull may grow until the bolt is at its proof strength. */
    public Expression loadFactor(Expression proof, Expression pull) {
        return proof.times(stressArea).minus(preload).dividedBy(share().times(pull));
    }

    /** Proof strength over stress. */
    public Expression yieldFactor(Expression proof, Expression pull) {
        return proof.dividedBy(stress(pull));
    }

    /** How many times the pull may grow until the joint gapes; below 1 it gapes, and the bolt then carries all of it and soon breaks. */
    public Expression separationFactor(Expression pull) {
        return separation().dividedBy(pull);
    }

    /** Pull at which the joint gapes. */
    public Expression separation() {
        return preload.dividedBy(Expression.constant(1).minus(share()));
    }

    /**
     * Goodman's factor of a bolt whose pull comes and goes between nothing and its most, growing from the preload: Shigley eq. (8-38). Holds
     * while the joint is closed.
     * @param endurance of the rolled thread, see {@code engine.BoltGrade}
     */
    public Expression fatigueFactor(Expression endurance, Expression ultimate, Expression pull) {
        Expression swing = share().times(pull).dividedBy(stressArea.times(2));
        Expression room = ultimate.minus(preloadStress()).times(endurance);
        return room.dividedBy(swing.times(ultimate.plus(endurance)));
    }

    /** Bolts needed so that the load together may grow by this factor before one is at its proof strength; not whole. */
    public Expression boltsNeeded(Expression proof, Expression load, Expression factor) {
        return factor.dividedBy(loadFactor(proof, load));
    }
}
