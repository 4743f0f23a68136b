package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of units against NIST Special Publication 811 (2008), Appendix B, as tabulated in the reference rows. */
public class UnitValidationTest {
    /** The words of the rows for one unit each, as the parser knows them; the rows add remarks in brackets. */
    private static final Map<String, String> SPELLED = Map.of(
            "oz (avoirdupois)", "oz",
            "kgf cm2 (pressure kgf/cm2)", "kgf/cm2",
            "hp (550 ft lbf/s)", "hp",
            "metric horsepower (75 kgf m/s)", "metric horsepower",
            "US gallon (231 in3)", "US gal",
            "lb/in (spring rate)", "lb/in",
            "kg m2 (numerically, = lbf ft s2)", "kg m2");

    public static List<ReferenceRows.Row> rows() {
        return ReferenceRows.of("03_displacement_cr_units").cases("DCU-01", "DCU-02", "DCU-03", "DCU-09");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void unitIsWorthWhatTheTableSays(ReferenceRows.Row row) {
        String stated = row.quantity().replaceFirst(" in inches$", "").replaceFirst(" \\(conventional\\)$", "");
        String number = stated.substring(0, stated.indexOf(' '));
        String unit = stated.substring(stated.indexOf(' ') + 1);
        Quantity quantity = understood(number + " " + SPELLED.getOrDefault(unit, unit));
        Unit wanted = Unit.of(quantity.dimension(), SPELLED.getOrDefault(row.unit(), row.unit()));
        row.check(wanted.fromSi(quantity.si()));
        row.check(quantity.valueIn(wanted).toDouble());
        row.check(wanted.fromSi(quantity.unit().toSi(quantity.value().toDouble())));
    }

    @Test
    void allRowsOfTheCasesArePresent() {
        assertThat(rows()).hasSize(20 + 4 + 7 + 1);
    }

    /** ISO 80000-3: a full turn is 2π rad; definition of the degree and the minute. */
    @Test
    void degreesAndTurnsCarryPi() {
        assertThat(understood("180 °").si()).isEqualTo(Math.PI);
        assertThat(understood("1 turn")).isEqualTo(understood("360 deg"));
        assertThat(understood("60 rpm").si()).isCloseTo(2 * Math.PI, within(1e-15));
        assertThat(understood("60 rpm")).isEqualTo(understood("1 r/s"));
    }

    /** NIST SP 811 (2008), B.8: atmosphere, fluid ounce, gallon (imperial); printed there to seven digits. */
    @Test
    void otherFactorsAgreeWithThePrintedTable() {
        assertThat(understood("1 atm").si()).isEqualTo(101_325);
        assertThat(understood("1 US fl oz").si()).isCloseTo(2.957_353e-5, within(0.5e-11));
        assertThat(understood("1 imp fl oz").si()).isCloseTo(2.841_306e-5, within(0.5e-11));
        assertThat(understood("1 imp gal").si()).isEqualTo(4.546_09e-3);
        assertThat(understood("1 slug").si()).isCloseTo(14.593_90, within(0.5e-5));
        assertThat(understood("1 lb ft2").si()).isCloseTo(4.214_011e-2, within(0.5e-8));
        assertThat(understood("1 lb/ft3").si()).isCloseTo(16.018_46, within(0.5e-5));
        assertThat(understood("1 lb/in3").si()).isCloseTo(2.767_990e4, within(0.5e-2));
        assertThat(understood("1 ksi").si()).isCloseTo(6.894_757e6, within(0.5));
        assertThat(understood("1 ozf in").si()).isCloseTo(7.061_552e-3, within(0.5e-9));
    }

    @Test
    void everyUnitSaysWhereItsFactorComesFrom() {
        assertThat(Units.all()).allSatisfy(unit -> assertThat(unit.source()).isNotBlank());
        assertThat(Units.all())
                .extracting(Unit::source)
                .filteredOn(s -> s.contains("conventional column"))
                .hasSize(4);
    }

    @Test
    void everySpellingFindsItsOwnUnit() {
        Set<String> seen = new HashSet<>();
        for (Unit unit : Units.all()) {
            assertThat(Unit.find(unit.dimension(), unit.symbol())).contains(unit);
            for (String spelling : unit.spellings()) {
                String plain = spelling.startsWith("~") ? spelling.substring(1) : spelling;
                assertThat(Unit.find(unit.dimension(), WrittenText.plain(plain)))
                        .as(plain)
                        .contains(unit);
                assertThat(Spellings.key(Spellings.key(plain))).isEqualTo(Spellings.key(plain));
            }
            assertThat(seen.add(unit.dimension() + " " + unit.symbol()))
                    .as(unit.symbol())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void unitsOfferedInMessagesAreRead(Dimension dimension) {
        assertThat(dimension.fittingUnits()).isNotEmpty();
        assertThat(dimension.fittingUnits())
                .filteredOn(unit -> !unit.startsWith("a bare"))
                .allSatisfy(unit -> assertThat(Unit.find(dimension, unit)).isPresent());
    }

    private static Quantity understood(String text) {
        Parsed parsed = QuantityParser.parse(text);
        assertThat(parsed).isInstanceOf(Parsed.Understood.class);
        return ((Parsed.Understood) parsed).stated().value();
    }
}
