package longthrow.core.life;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.Fits;
import longthrow.core.engine.LineContact;
import longthrow.core.engine.PointContact;
import longthrow.core.formula.Expression;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bolts, fatigue, columns, sections, contact, disks, threads, metals, pin and inertia loads against the reference rows; each row names its source and carries its inputs. */
class StrengthValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("08_strength");
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void strengthIsWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(124);
        assertThat(COMPUTED.leftOut(Set.of())).isEmpty();
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        bolts(to);
        fatigue(to, "STR-03", 172, 103);
        fatigue(to, "STR-04", 69, 138);
        life(to);
        column(to, "STR-08", new double[] {71_700, 503, 84, 120, 5.2}, Column.PINNED);
        column(to, "STR-09", new double[] {205_000, 1080, 110, 90, 3.1}, Column.FIXED);
        column(to, "STR-10", new double[] {200_000, 350, 900, 200, 5}, Column.PINNED);
        Section beam = Section.ofBeam(number(16e-3), number(12e-3), number(4e-3), number(3e-3));
        to.putFrom(
                "STR-11",
                1,
                value(beam.area()) * 1e6,
                value(beam.strong()) * 1e12,
                value(beam.weak()) * 1e12,
                value(beam.strongRadius()) * 1e3,
                value(beam.weakRadius()) * 1e3);
        contacts(to);
        disk(to, "STR-15", new double[] {0.02, 0.085, 6000, 7100, 110e9}, 0.26);
        disk(to, "STR-16", new double[] {0.07, 0.09, 8000, 7850, 205e9}, 0.3);
        disk(to, "STR-17", new double[] {0.012, 0.075, 12_000, 2810, 71.7e9}, 0.33);
        double rim = 0.080 * Units.RPM.toSi(7500);
        double limit = value(RotatingDisk.rimSpeedOfStress(number(7850), number(250e6)));
        to.putFrom(
                "STR-18",
                1,
                value(RotatingDisk.thinRim(number(7850), number(rim))) / 1e6,
                value(RotatingDisk.solidCentre(number(7850), 0.3, number(rim))) / 1e6,
                Units.RPM.fromSi(limit / 0.080));
        threads(to);
        metals(to);
        to.put("STR-29.1", hot(68, 21.4e-6 * 100, 0.045, 19.4e-6 * 160));
        to.put("STR-30.1", hot(68, 11e-6 * 120, 0.075, 22.3e-6 * 180));
        PistonPin pin = new PistonPin(number(18e-3), number(11e-3), number(54e-3), number(20e-3), number(24e-3));
        Expression load = number(14_000);
        to.putFrom(
                "STR-31",
                1,
                value(pin.moment(load)) * 1e3,
                value(pin.bendingStress(load)) / 1e6,
                value(pin.meanShear(load)) / 1e6);
        inertia(to, "STR-32", 0.19, 0.06, 0.084, 7000);
        inertia(to, "STR-33", 0.165, 0.05, 0.098, 9000);
        return to;
    }

    /** Customary units as printed: the formulas hold in any coherent ones (kip, in2, Mlbf/in with kpsi). */
    private static void bolts(ComputedRows to) {
        BoltedJoint joint = new BoltedJoint(number(6.50), number(13.8), number(0.373), number(25));
        to.putFrom(
                "STR-01",
                1,
                value(joint.preloadStress()),
                value(joint.share()),
                value(joint.stress(number(6))),
                value(Tightening.torque(number(0.2), number(25_000), number(0.75))));
        Expression d = number(0.625);
        Expression bolt = BoltedJoint.boltStiffness(
                d.squared().times(Math.PI / 4), number(0.226), number(0.75), number(0.75), number(30));
        Expression members = BoltedJoint.memberStiffness(number(14), d, number(1.5));
        Expression proof = number(85);
        Expression preload = proof.times(0.226).times(0.75);
        BoltedJoint cap = new BoltedJoint(bolt, members, number(0.226), preload);
        Expression each = number(6);
        double needed = Math.ceil(value(cap.boltsNeeded(proof, number(36), number(2))));
        to.putFrom(
                "STR-02",
                1,
                value(bolt),
                value(members),
                value(cap.share()),
                value(preload),
                needed,
                value(cap.loadFactor(proof, each)),
                value(cap.yieldFactor(proof, each)),
                value(cap.separationFactor(each)));
    }

    /**
     * The mean is torsion, 103 and 138 MPa, as one stress by von Mises: the inputs print it rounded to six digits, which is not enough for the 1e-9 of
     * Soderberg's rows (they invert to 178.40123 and 239.02301).
     */
    private static void fatigue(ComputedRows to, String caseId, double alternating, double meanShear) {
        MeanStress stress = new MeanStress(number(alternating), number(Math.sqrt(3) * meanShear));
        Expression endurance = number(276);
        Expression yield = number(413);
        Expression ultimate = number(551);
        to.putFrom(
                caseId,
                1,
                value(stress.goodman(endurance, ultimate)),
                value(stress.gerber(endurance, ultimate)),
                value(stress.elliptic(endurance, yield)),
                value(stress.soderberg(endurance, yield)));
    }

    private static void life(ComputedRows to) {
        StressLife line = new StressLife(number(551e6), 0.9, number(276e6), StressLife.STEEL_KNEE);
        Expression swing = number(358.5e6);
        MeanStress reversed = new MeanStress(swing, number(0));
        to.putFrom(
                "STR-05",
                1,
                value(line.factor()) / 1e6,
                value(line.exponent()),
                value(line.swings(swing)),
                value(reversed.goodman(number(276e6), number(551e6))));
        MeanStress stress = new MeanStress(number(120), number(80));
        to.putFrom(
                "STR-06",
                1,
                value(stress.reversedMorrow(number(1250))),
                value(stress.reversedTopper()),
                value(stress.reversed(number(900))));
        to.put("STR-07.1", Duty.damage(List.of(2e5, 5e4, 1e4), List.of(1e6, 3e5, 8e4)));
    }

    private static void column(ComputedRows to, String caseId, double[] bar, double ends) {
        Column column = new Column(
                number(bar[3] * 1e-6),
                number(bar[4] * 1e-3),
                number(bar[2] * 1e-3),
                ends,
                number(bar[0] * 1e6),
                number(bar[1] * 1e6));
        to.putFrom(
                caseId,
                1,
                value(column.slenderness()),
                value(column.transition()),
                value(column.euler()),
                value(column.johnson()),
                value(column.critical()),
                value(column.rankine()));
    }

    private static void contacts(ComputedRows to) {
        Expression ironOnSteel = LineContact.effectiveModulus(number(110e9), 0.26, number(205e9), 0.29);
        line(to, "STR-12", number(900), number(28e-3), number(10e-3), ironOnSteel);
        Expression ball = LineContact.effectiveModulus(number(207e9), 0.292, number(207e9), 0.292);
        Expression radius = number(5e-3);
        Expression load = number(100);
        to.putFrom(
                "STR-13",
                1,
                value(PointContact.contactRadius(load, radius, ball)) * 1e3,
                value(PointContact.largestPressure(load, radius, ball)) / 1e6,
                value(PointContact.approach(load, radius, ball)) * 1e3);
        Expression steels = LineContact.effectiveModulus(number(205e9), 0.29, number(205e9), 0.29);
        Expression nose = LineContact.combinedRadius(number(6e-3), number(9e-3));
        line(to, "STR-14", number(1200), nose, number(9e-3), steels);
    }

    private static void line(
            ComputedRows to, String caseId, Expression load, Expression radius, Expression length, Expression modulus) {
        Expression pressure = LineContact.largestPressure(load, radius, length, modulus);
        to.putFrom(
                caseId,
                1,
                value(LineContact.halfWidth(load, radius, length, modulus)) * 1e3,
                value(pressure) / 1e6,
                value(LineContact.largestShear(pressure)) / 1e6);
    }

    /** Moduli stand beside the tolerance of the rows for growth: 110, 205 and 71.7 GPa. */
    private static void disk(ComputedRows to, String caseId, double[] disk, double poisson) {
        RotatingDisk wheel = new RotatingDisk(number(disk[0]), number(disk[1]), number(disk[3]), poisson);
        Expression speed = number(Units.RPM.toSi(disk[2]));
        to.putFrom(
                caseId,
                1,
                value(wheel.hoopAtBore(speed)) / 1e6,
                value(wheel.hoopAtRim(speed)) / 1e6,
                value(wheel.largestRadial(speed)) / 1e6,
                value(wheel.radiusOfLargestRadial()) * 1e3,
                value(wheel.asThinRing(speed)) / 1e6,
                value(wheel.growth(speed, number(disk[4]))) * 1e3);
    }

    private static void threads(ComputedRows to) {
        double[][] threads = {{6, 1}, {8, 1.25}, {10, 1.5}, {5, 0.8}};
        for (int k = 0; k < threads.length; k++) {
            to.put(
                    "STR-" + (19 + k) + ".1",
                    value(metric(threads[k][0], threads[k][1]).stressArea()) * 1e6);
        }
        ScrewThread m8 = metric(8, 1.25);
        to.putFrom(
                "STR-23",
                1,
                value(m8.pitchDiameter()) * 1e3,
                value(m8.torque(number(15_000), number(0.12), number(0.12), number(10e-3))));
    }

    private static ScrewThread metric(double diameter, double pitch) {
        return new ScrewThread(number(diameter * 1e-3), number(pitch * 1e-3), ScrewThread.Form.METRIC);
    }

    private static void metals(ComputedRows to) {
        List<Alloy> ductile =
                List.of(Alloy.BILLET_ALUMINIUM_ROD, Alloy.FORGED_2618, Alloy.CAST_ROD, Alloy.BILLET_STEEL);
        int number = 24;
        for (Alloy alloy : ductile) {
            to.putFrom(
                    "STR-" + number,
                    1,
                    alloy.ultimate() / 1e6,
                    alloy.yieldStrength() / 1e6,
                    alloy.modulus() / 1e9,
                    alloy.density(),
                    alloy.expansion() * 1e6);
            number++;
        }
        Alloy iron = Alloy.GREY_IRON_30;
        to.putFrom("STR-28", 1, iron.ultimate() / 1e6, iron.modulus() / 1e9, iron.density(), iron.expansion() * 1e6);
    }

    private static double hot(double bore, double boreGrowth, double cold, double pistonGrowth) {
        Expression piston = number((bore - cold) * 1e-3);
        return value(Fits.hotClearance(number(bore * 1e-3), number(boreGrowth), piston, number(pistonGrowth))) * 1e3;
    }

    private static void inertia(
            ComputedRows to, String caseId, double piston, double smallEnd, double rod, double rpm) {
        double speed = Units.RPM.toSi(rpm);
        CrankMotion crank = new CrankMotion(0.027, rod, 0);
        MovingParts parts = new MovingParts(piston, smallEnd, 0.11, 0, 0);
        Loads loads = new Loads(crank, parts, 0.068, GasTrace.none(), speed);
        Load top = loads.at(0);
        to.putFrom(
                caseId,
                1,
                crank.travelBend(0) * speed * speed,
                -crank.travelBend(Math.PI) * speed * speed,
                -top.rodShank(),
                loads.boltPull(top, 0) / 2);
    }
}
