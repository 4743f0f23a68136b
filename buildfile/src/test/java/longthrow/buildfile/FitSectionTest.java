package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.build.FitWish;
import longthrow.core.catalogue.PartKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FitSectionTest {
    private static String file(String fit) {
        return BuildFileReadTest.HEAD + "fit: {" + fit + "}\n";
    }

    @Test
    void everyKeyIsRead() {
        FitWish wish = BuildFile.read(file("choose: [connecting_rod, gasket], keep: [M-565, T66], budget: 330 EUR,"
                        + " machining: no, order: [price, certainty], air_pressure: 990 hPa"))
                .build()
                .orElseThrow()
                .fit();
        assertThat(wish.choose()).containsExactly(PartKind.CONNECTING_ROD, PartKind.GASKET);
        assertThat(wish.keep()).containsExactly("M-565", "T66");
        assertThat(wish.budget()).hasValue(33_000);
        assertThat(wish.currency()).isEqualTo("EUR");
        assertThat(wish.machining()).isFalse();
        assertThat(wish.order()).containsExactly(FitWish.Preference.PRICE, FitWish.Preference.CERTAINTY);
        assertThat(wish.airPressure()).hasToString("990 hPa");
    }

    @Test
    void whatIsNotSaidIsAsInTheEmptyWish() {
        assertThat(BuildFile.read(BuildFileReadTest.HEAD).build().orElseThrow().fit())
                .isEqualTo(FitWish.NONE);
        FitWish wish = BuildFile.read(file("budget: 330, keep: T66"))
                .build()
                .orElseThrow()
                .fit();
        assertThat(wish.currency()).isEmpty();
        assertThat(wish.keep()).isEqualTo(List.of("T66"));
        assertThat(wish.machining()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "choose: [rods]|fit.choose[1]|is not one of the words that fit here",
                "choose: [piston, piston]|fit.choose[2]|stands twice",
                "keep: [A, A]|fit.keep[2]|stands twice",
                "budget: plenty|fit.budget|is no amount of money",
                "budget: -3 EUR|fit.budget|leave out the minus",
                "budget: 330 kg|fit.budget|ISO 4217",
                "budget: 330 thalers|fit.budget|three letters of its currency",
                "budget: $330|fit.budget|instead of its sign",
                "machining: perhaps|fit.machining|yes, no",
                "order: [cheap]|fit.order[1]|is not one of the words that fit here",
                "air_pressure: 14.7|fit.air_pressure|has no unit",
                "air_pressure: 0 hPa|fit.air_pressure|is no air pressure of a place",
                "chose: [piston]|fit.chose|did you mean choose?"
            })
    void aFaultSaysWhere(String fit, String path, String says) {
        ReadBuild read = BuildFile.read(file(fit));
        assertThat(read.build()).isEmpty();
        assertThat(read.faults().get(0).path()).isEqualTo(path);
        assertThat(read.faults().get(0).message()).contains(says);
    }
}
